package org.readback.shell;

import android.content.res.AssetManager;
import java.io.File;
import java.io.IOException;
import org.readback.desk.Core;
import org.readback.desk.ModelStore;
import org.readback.desk.Phone;

/** Makes the model ready in the background and tells the core how far it is, and why when it cannot be. */
final class ModelLoader {
    private static final int STEP = 10; // per cent between two pieces of news

    private final ModelStore store;
    private final Phone.Words words;

    ModelLoader(AssetManager assets, File root, Phone.Words words) {
        this(new ModelStore(path -> assets.open("model/" + path), root), words);
    }

    ModelLoader(ModelStore store, Phone.Words words) {
        this.store = store;
        this.words = words;
    }

    /** Runs to the end on the caller's thread. Touch works meanwhile. */
    void run(Core core) {
        int[] told = {-1};
        try {
            File dir = store.ready(percent -> {
                if (percent < 100 && percent / STEP > told[0]) {
                    told[0] = percent / STEP;
                    core.device("speech-off", percent, words.of("speech_preparing", percent));
                }
            });
            if (dir == null) {
                core.model("", words.of("speech_no_engine"));
            } else {
                core.model(dir.getPath(), "");
            }
        } catch (ModelStore.NoRoomException e) {
            core.model("", words.of("speech_failed", words.of("speech_no_room", (int) (e.needed >> 20) + 1)));
        } catch (ModelStore.DamagedException e) {
            core.model("", words.of("speech_failed", words.of("speech_damaged", e.path)));
        } catch (IOException e) {
            core.model("", words.of("speech_failed", String.valueOf(e.getMessage())));
        }
    }
}
