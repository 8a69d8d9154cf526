package org.readback.shell;

import android.content.ContentProvider;
import android.content.ContentValues;
import android.content.Context;
import android.database.Cursor;
import android.database.MatrixCursor;
import android.net.Uri;
import android.os.ParcelFileDescriptor;
import android.provider.OpenableColumns;
import java.io.File;
import java.io.FileNotFoundException;
import java.io.IOException;

/**
 * Lends single files to the app the person chose: read only, only out of the share folder, only with the grant that goes
 * with the sharing. Not exported; nothing can be listed.
 */
public final class ShareProvider extends ContentProvider {
    static final String AUTHORITY = "org.readback.shell.share";

    /** The folder files are copied into before they are lent. */
    static File folder(Context context) {
        return new File(context.getCacheDir(), "share");
    }

    static Uri uri(String name) {
        return new Uri.Builder().scheme("content").authority(AUTHORITY).appendPath(name).build();
    }

    static String type(String name) {
        if (name.endsWith(".html")) {
            return "text/html";
        }
        if (name.endsWith(".zip")) {
            return "application/zip";
        }
        if (name.endsWith(".jpg")) {
            return "image/jpeg";
        }
        return name.endsWith(".jsonl") ? "application/jsonl" : "application/octet-stream";
    }

    private File file(Uri uri) throws FileNotFoundException {
        String name = uri.getLastPathSegment();
        if (uri.getPathSegments().size() != 1 || name == null || name.isEmpty()) {
            throw new FileNotFoundException("share: no such file");
        }
        try {
            File dir = folder(getContext()).getCanonicalFile();
            File f = new File(dir, name).getCanonicalFile();
            if (!dir.equals(f.getParentFile()) || !f.isFile()) {
                throw new FileNotFoundException("share: no such file");
            }
            return f;
        } catch (IOException e) {
            throw new FileNotFoundException("share: no such file");
        }
    }

    @Override
    public boolean onCreate() {
        return true;
    }

    @Override
    public ParcelFileDescriptor openFile(Uri uri, String mode) throws FileNotFoundException {
        if (!"r".equals(mode)) {
            throw new FileNotFoundException("share: files are lent for reading only");
        }
        return ParcelFileDescriptor.open(file(uri), ParcelFileDescriptor.MODE_READ_ONLY);
    }

    @Override
    public Cursor query(Uri uri, String[] projection, String selection, String[] args, String order) {
        String[] columns = projection != null ? projection : new String[] {OpenableColumns.DISPLAY_NAME, OpenableColumns.SIZE};
        MatrixCursor c = new MatrixCursor(columns, 1);
        try {
            File f = file(uri);
            MatrixCursor.RowBuilder row = c.newRow();
            for (String col : columns) {
                if (OpenableColumns.DISPLAY_NAME.equals(col)) {
                    row.add(f.getName());
                } else if (OpenableColumns.SIZE.equals(col)) {
                    row.add(f.length());
                } else {
                    row.add(null);
                }
            }
        } catch (FileNotFoundException e) {
            return c; // no rows
        }
        return c;
    }

    @Override
    public String getType(Uri uri) {
        String name = uri.getLastPathSegment();
        return name == null ? null : type(name);
    }

    @Override
    public Uri insert(Uri uri, ContentValues values) {
        throw new UnsupportedOperationException("share: read only");
    }

    @Override
    public int delete(Uri uri, String selection, String[] args) {
        throw new UnsupportedOperationException("share: read only");
    }

    @Override
    public int update(Uri uri, ContentValues values, String selection, String[] args) {
        throw new UnsupportedOperationException("share: read only");
    }
}
