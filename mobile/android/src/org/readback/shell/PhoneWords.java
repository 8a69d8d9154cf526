package org.readback.shell;

import android.content.Context;
import android.content.res.Resources;
import org.readback.desk.Phone;

/** The shell's sentences, from the string resources of the person's language. */
final class PhoneWords implements Phone.Words {
    private final Context context;

    PhoneWords(Context context) {
        this.context = context;
    }

    @Override
    public String of(String key, Object... args) {
        int id = context.getResources().getIdentifier(key, "string", context.getPackageName());
        if (id == 0) {
            throw new Resources.NotFoundException("string " + key);
        }
        return context.getString(id, args);
    }
}
