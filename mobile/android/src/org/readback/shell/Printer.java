package org.readback.shell;

import android.content.Context;
import android.print.PrintAttributes;
import android.print.PrintManager;
import android.webkit.WebView;

/** Prints a record, or saves it as PDF, through the phone's print dialogue. */
final class Printer {
    private final Context context;
    private WebView page; // kept until the next one: the dialogue draws from it

    Printer(Context activity) {
        this.context = activity;
    }

    /** Loads a record in a view of its own, through the same in-process client, and opens the dialogue. */
    void print(String path, PageClient client) {
        page = MainActivity.view(context);
        page.getSettings().setJavaScriptEnabled(false);
        page.setWebViewClient(client);
        page.loadUrl(PageClient.ORIGIN + path);
    }

    /** The record's page has loaded. */
    void loaded(WebView view) {
        if (view == null || view != page) {
            return;
        }
        String name = context.getString(R.string.print_job);
        context.getSystemService(PrintManager.class).print(name, view.createPrintDocumentAdapter(name), new PrintAttributes.Builder().build());
    }

    WebView page() {
        return page;
    }
}
