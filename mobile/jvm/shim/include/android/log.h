/* Stands in for Android's log on a plain JVM: the generated binding prints through it. */
#pragma once
#include <stdio.h>
enum { ANDROID_LOG_INFO = 4, ANDROID_LOG_FATAL = 7 };
#define __android_log_print(level, tag, ...) (fprintf(stderr, "%s: ", tag), fprintf(stderr, __VA_ARGS__), fputc('\n', stderr))
#define __android_log_vprint(level, tag, fmt, args) (fprintf(stderr, "%s: ", tag), vfprintf(stderr, fmt, args), fputc('\n', stderr))
