#!/bin/sh
# permissions.sh APK: fails unless the APK asks for exactly the permissions of permissions.txt; none of them reaches a network.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
has=$(aapt dump badging "$1" | sed -n "s/^uses-permission[^:]*: name='\([^']*\)'.*/\1/p" | sort)
if [ "$has" != "$(sort "$here/permissions.txt")" ]; then
	echo "$1: its permissions are not those of permissions.txt; it asks for:" >&2
	echo "$has" >&2
	exit 1
fi
