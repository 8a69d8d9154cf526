package org.readback.jvm;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.readback.mobile.Core;
import org.readback.mobile.Listener;
import org.readback.mobile.Mobile;
import org.readback.mobile.Reply;
import org.readback.mobile.Subscription;

/** What crosses between Java and Go, and what must not. */
class BindingTest {
    @TempDir Path dir;
    private final FakeHost host = new FakeHost();
    private Core core;

    @BeforeEach
    void open() throws Exception {
        core = Mobile.open(dir.resolve("jobs").toString(), "test", "en", host);
    }

    @AfterEach
    void close() throws Exception {
        core.close();
    }

    private static String code(Exception e) {
        return Mobile.code(e.getMessage());
    }

    private static byte[] utf8(String s) {
        return s.getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] news(String text) {
        return utf8("{\"kind\":\"noise\",\"level\":7,\"text\":\"" + text + "\"}");
    }

    @Test
    void openingWithoutAFolderIsAnError() {
        Exception e = assertThrows(Exception.class, () -> Mobile.open("", "test", "en", host));
        assertEquals("bad", code(e), e.getMessage());
    }

    @Test
    void openingWithoutAHostIsAnError() {
        Exception e = assertThrows(Exception.class, () -> Mobile.open(dir.toString(), "test", "en", null));
        assertEquals("bad", code(e), e.getMessage());
    }

    @Test
    void openingOverAFileIsAnErrorThatNamesIt() throws Exception {
        Path f = Files.writeString(dir.resolve("a file"), "x");
        Exception e = assertThrows(Exception.class, () -> Mobile.open(f.toString(), "test", "en", host));
        assertEquals("failed", code(e));
        assertTrue(e.getMessage().contains("a file"), e.getMessage());
    }

    @Test
    void codesComeOffOnlyWhenTheyAreCodes() {
        assertEquals("deaf", Mobile.code("deaf: nobody listens"));
        assertEquals("", Mobile.code("something: else"));
        assertEquals("", Mobile.code("closed"));
        assertEquals("", Mobile.code(null));
    }

    @Test
    void thePageComesAcrossByteForByte() throws Exception {
        Reply r = core.request("GET", "/", null);
        assertEquals(200, r.status());
        assertTrue(r.type().startsWith("text/html"));
        Path page = Path.of(System.getProperty("readback.root"), "mobile/page");
        assertArrayEquals(Files.readAllBytes(page.resolve("index.html")), r.body());
        assertArrayEquals(Files.readAllBytes(page.resolve("app.js")), core.request("GET", "/app.js", null).body());
        assertEquals(404, core.request("GET", "/../go.mod", null).status());
        assertEquals(405, core.request("DELETE", "/", null).status());
    }

    @Test
    void bytesGoInAndComeBackUnchanged() throws Exception {
        String odd = "zw\u00f6lf \u6e29\u5ea6 \ud83d\udd27 \u0000";
        core.request("POST", "/api/prefs", utf8("{\"voice\":true,\"done\":true,\"theme\":\"" + odd.replace("\u0000", "\\u0000") + "\"}"));
        String state = new String(core.request("GET", "/api/state", null).body(), StandardCharsets.UTF_8);
        assertTrue(state.contains("zw\u00f6lf \u6e29\u5ea6 \ud83d\udd27 \\u0000"), state);
    }

    @Test
    void aCallOfThePageIsAnswered() throws Exception {
        String reply = new String(core.message(utf8("{\"id\":41,\"method\":\"GET\",\"path\":\"/api/state\"}")), StandardCharsets.UTF_8);
        assertTrue(reply.startsWith("{\"re\":41,\"status\":200,"), reply);
        assertTrue(new String(core.message(utf8("rubbish")), StandardCharsets.UTF_8).contains("\"status\":400"));
        assertTrue(new String(core.message(new byte[0]), StandardCharsets.UTF_8).contains("\"status\":400"));
    }

    @Test
    void badArgumentsAreNamed() {
        assertEquals("bad", code(assertThrows(Exception.class, () -> core.device(utf8("{\"kind\":\"toaster\"}")))));
        assertEquals("bad", code(assertThrows(Exception.class, () -> core.device(null))));
        assertEquals("bad", code(assertThrows(Exception.class, () -> core.feed(new byte[3]))));
        assertEquals("bad", code(assertThrows(Exception.class, () -> core.subscribe(null))));
    }

    @Test
    void soundBeforeTheModelIsThereIsNotUsed() {
        assertEquals("deaf", code(assertThrows(Exception.class, () -> core.feed(new byte[3200]))));
    }

    @Test
    void aMissingModelIsToldWithItsReason() throws Exception {
        List<String> got = Collections.synchronizedList(new ArrayList<>());
        core.subscribe(listener(got::add));
        core.model("libvosk.so", "", "the shelf is empty");
        eventually(() -> got.stream().anyMatch(m -> m.contains("the shelf is empty")));
        core.model("libvosk.so", "/nowhere", ""); // only the first call counts
        String state = new String(core.request("GET", "/api/state", null).body(), StandardCharsets.UTF_8);
        assertTrue(state.contains("the shelf is empty"), state);
    }

    @Test
    void aLibraryThatIsNotThereIsNotTheEnd() throws Exception {
        List<String> got = Collections.synchronizedList(new ArrayList<>());
        core.subscribe(listener(got::add));
        core.model("no-such-library.so", dir.toString(), "");
        eventually(() -> got.stream().anyMatch(m -> m.contains("\"state\":\"off\"")));
        assertEquals(200, core.request("GET", "/", null).status());
    }

    @Test
    void everythingIsClosedAfterClose() throws Exception {
        Subscription s = core.subscribe(listener(m -> { }));
        core.close();
        core.close();
        s.stop();
        assertEquals("closed", code(assertThrows(Exception.class, () -> core.request("GET", "/", null))));
        assertEquals("closed", code(assertThrows(Exception.class, () -> core.feed(new byte[2]))));
        assertEquals("closed", code(assertThrows(Exception.class, () -> core.spoke("x", false))));
        assertEquals("closed", code(assertThrows(Exception.class, () -> core.message(new byte[0]))));
        assertEquals("closed", code(assertThrows(Exception.class, () -> core.photo("before", new byte[4]))));
        assertEquals("closed", code(assertThrows(Exception.class, () -> core.model("", "", ""))));
        assertEquals("closed", code(assertThrows(Exception.class, () -> core.subscribe(listener(m -> { })))));
    }

    @Test
    void objectsMadeByHandAreClosedOnes() {
        assertEquals("closed", code(assertThrows(Exception.class, () -> new Core().request("GET", "/", null))));
        assertEquals(0, new Reply().status());
    }

    @Test
    void aPanicInsideBecomesAnException() throws Exception {
        // A subscription that was never begun has nothing to stop: a mistake of the caller that panics inside Go.
        Exception e = assertThrows(Exception.class, () -> new Subscription().stop());
        assertEquals("panic", code(e), e.getMessage());
        assertTrue(e.getMessage().contains("mobile.go"), "the stack is told: " + e.getMessage());
        assertEquals(200, core.request("GET", "/", null).status(), "and the core lives on");
    }

    @Test
    void anExceptionOfAListenerStaysOnItsSide() throws Exception {
        AtomicInteger calls = new AtomicInteger();
        List<String> got = Collections.synchronizedList(new ArrayList<>());
        core.subscribe(json -> {
            calls.incrementAndGet();
            throw new IllegalStateException("a listener in trouble \ud83d\udca5");
        });
        core.subscribe(json -> {
            throw new StackOverflowError();
        });
        core.subscribe(listener(got::add));
        for (int i = 0; i < 5; i++) {
            core.device(news("n" + i));
        }
        eventually(() -> got.size() >= 5 && calls.get() >= 5);
        assertTrue(got.get(4).contains("n4"));
    }

    @Test
    void aStoppedStreamIsSilent() throws Exception {
        List<String> got = Collections.synchronizedList(new ArrayList<>());
        Subscription s = core.subscribe(listener(got::add));
        core.device(news("before"));
        eventually(() -> got.size() == 1);
        s.stop();
        s.stop();
        List<String> other = Collections.synchronizedList(new ArrayList<>());
        core.subscribe(listener(other::add));
        core.device(news("after"));
        eventually(() -> other.size() == 1);
        assertEquals(1, got.size());
    }

    @Test
    void lentBytesMayBeReusedAtOnce() throws Exception {
        List<String> got = Collections.synchronizedList(new ArrayList<>());
        core.subscribe(listener(got::add));
        byte[] lent = news("kept");
        core.device(lent);
        Arrays.fill(lent, (byte) 'x');
        eventually(() -> got.size() == 1);
        assertTrue(got.get(0).contains("kept"), got.get(0));
    }

    @Test
    void fiftyGoroutinesCallBackAtOnce() throws Exception {
        int n = 50;
        int each = 40;
        CountDownLatch all = new CountDownLatch(n * each);
        Set<Long> threads = Collections.synchronizedSet(new HashSet<>());
        List<String> wrong = Collections.synchronizedList(new ArrayList<>());
        List<Core> cores = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            Core c = Mobile.open(dir.resolve("core" + i).toString(), "test", "en", new FakeHost());
            cores.add(c);
            String mark = "\u6e29\u5ea6-" + i + "-\ud83d\udd25";
            c.subscribe(json -> {
                threads.add(Thread.currentThread().getId());
                String s = new String(json, StandardCharsets.UTF_8);
                if (s.contains("\"device\"")) {
                    if (!s.contains(mark)) {
                        wrong.add(s);
                    }
                    all.countDown();
                }
            });
        }
        List<Thread> senders = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            int k = i;
            Thread t = new Thread(() -> {
                try {
                    for (int j = 0; j < each; j++) {
                        cores.get(k).device(news("\u6e29\u5ea6-" + k + "-\ud83d\udd25"));
                    }
                } catch (Exception e) {
                    wrong.add(e.getMessage());
                }
            });
            senders.add(t);
            t.start();
        }
        for (Thread t : senders) {
            t.join();
        }
        assertTrue(all.await(30, TimeUnit.SECONDS), all.getCount() + " messages are missing");
        assertEquals(List.of(), wrong);
        assertTrue(threads.size() > 1, "callbacks came on one thread only");
        for (Core c : cores) {
            c.close();
        }
    }

    @Test
    void aHundredThousandCalls() throws Exception {
        long before = 0;
        for (int i = 0; i < 100_000; i++) {
            if (i % 4 == 0) {
                Reply r = core.request("GET", "/icon.svg", null); // makes a proxy and a byte array
                if (r.status() != 200) {
                    throw new AssertionError("call " + i);
                }
            } else {
                core.spoke("nobody", (i & 1) == 0);
            }
            if (i == 20_000) {
                System.gc();
                before = rss();
            }
        }
        System.gc();
        long grown = rss() - before;
        assertTrue(grown < 64L << 20, "resident memory grew by " + (grown >> 20) + " MB");
    }

    @Test
    void closedCoresAndTheirListenersAreCollected() throws Exception {
        List<java.lang.ref.WeakReference<Object>> weak = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            Core c = Mobile.open(dir.resolve("c" + i).toString(), "test", "en", new FakeHost());
            Listener l = new Cycle(c); // holds the core that holds it
            c.subscribe(l);
            c.close();
            weak.add(new java.lang.ref.WeakReference<>(l));
        }
        eventually(() -> {
            System.gc();
            for (int i = 0; i < 200; i++) {
                core.request("GET", "/app.js", null); // garbage for Go's collector, which lets go of the Java side
            }
            return weak.stream().filter(w -> w.get() != null).count() <= 2;
        });
    }

    private static final class Cycle implements Listener {
        final Core core;

        Cycle(Core core) {
            this.core = core;
        }

        @Override
        public void message(byte[] json) {
        }
    }

    private static long rss() throws Exception {
        for (String line : Files.readAllLines(Path.of("/proc/self/status"))) {
            if (line.startsWith("VmRSS:")) {
                return Long.parseLong(line.replaceAll("[^0-9]", "")) << 10;
            }
        }
        throw new AssertionError("no VmRSS");
    }

    interface Got {
        void message(String s);
    }

    static Listener listener(Got got) {
        return json -> got.message(new String(json, StandardCharsets.UTF_8));
    }

    interface Condition {
        boolean holds() throws Exception;
    }

    static void eventually(Condition c) throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
        while (!c.holds()) {
            assertFalse(System.nanoTime() > end, "still not so after 20 s");
            Thread.sleep(10);
        }
    }
}
