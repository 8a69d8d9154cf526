package org.readback.desk;

import java.nio.charset.StandardCharsets;

/** Answer to a request: status as in HTTP, media type, body. */
public final class Reply {
    public final int status;
    public final String type;
    public final byte[] body;

    public Reply(int status, String type, byte[] body) {
        this.status = status;
        this.type = type;
        this.body = body == null ? new byte[0] : body;
    }

    public static Reply text(int status, String text) {
        return new Reply(status, "text/plain; charset=utf-8", text.getBytes(StandardCharsets.UTF_8));
    }

    public String string() {
        return new String(body, StandardCharsets.UTF_8);
    }

    /** Media type without its parameters. */
    public String mime() {
        int semi = type.indexOf(';');
        return (semi < 0 ? type : type.substring(0, semi)).trim();
    }

    /** Character set named by the type, or null. */
    public String charset() {
        int at = type.indexOf("charset=");
        return at < 0 ? null : type.substring(at + "charset=".length()).trim();
    }
}
