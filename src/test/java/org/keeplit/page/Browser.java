package org.keeplit.page;

import com.google.common.io.MoreFiles;
import com.google.common.io.RecursiveDeleteOption;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.WebSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** A page in a headless Chromium, driven over its debugging protocol. What it complains of and what it asks of the network is kept. */
public final class Browser implements AutoCloseable {
    private static final long PATIENCE = 60;

    private final Process process;
    private final Path profile;
    private final WebSocket socket;
    private final Map<Integer, CompletableFuture<JsonObject>> waiting = new ConcurrentHashMap<>();
    private final List<String> complaints = new CopyOnWriteArrayList<>();
    private final List<String> requests = new CopyOnWriteArrayList<>();
    private final CompletableFuture<Void> loaded = new CompletableFuture<>();
    private String session;
    private int number;

    /** {@return where Chromium is; nothing if it is not on the path} */
    public static Optional<Path> chromium() {
        return Stream.of(System.getenv("PATH").split(File.pathSeparator))
                .flatMap(folder -> Stream.of("chromium", "chromium-browser", "google-chrome").map(name -> Path.of(folder, name)))
                .filter(Files::isExecutable)
                .findFirst();
    }

    /** Opens a page. @param page its text */
    public Browser(String page) {
        try {
            profile = Files.createTempDirectory("browser");
            Path file = Files.writeString(profile.resolve("page.html"), page);
            process = new ProcessBuilder(
                            chromium().orElseThrow().toString(), "--headless", "--no-sandbox", "--disable-gpu", "--no-first-run",
                            "--disable-dev-shm-usage", "--disable-background-networking", "--remote-debugging-port=0",
                            "--user-data-dir=" + profile.resolve("profile"), "about:blank")
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            socket = HttpClient.newHttpClient()
                    .newWebSocketBuilder()
                    .buildAsync(URI.create(address(process)), new Listening())
                    .get(PATIENCE, TimeUnit.SECONDS);
            String target = ask("Target.createTarget", json("url", "about:blank")).get("targetId").getAsString();
            JsonObject attach = json("targetId", target);
            attach.addProperty("flatten", true);
            session = ask("Target.attachToTarget", attach).get("sessionId").getAsString();
            for (String domain : List.of("Page", "Runtime", "Log", "Network")) {
                ask(domain + ".enable", new JsonObject());
            }
            ask("Page.navigate", json("url", file.toUri().toString()));
            loaded.get(PATIENCE, TimeUnit.SECONDS);
        } catch (Exception e) {
            throw new AssertionError("Chromium does not do what is asked", e);
        }
    }

    private static String address(Process process) throws IOException {
        BufferedReader said = process.errorReader(StandardCharsets.UTF_8);
        for (String line = said.readLine(); line != null; line = said.readLine()) {
            int at = line.indexOf("ws://");
            if (at >= 0) {
                Thread drain = new Thread(() -> said.lines().forEach(l -> {}));
                drain.setDaemon(true);
                drain.start();
                return line.substring(at).trim();
            }
        }
        throw new IOException("Chromium ended before it listened");
    }

    private static JsonObject json(String name, String value) {
        JsonObject object = new JsonObject();
        object.addProperty(name, value);
        return object;
    }

    private JsonObject ask(String method, JsonObject parameters) throws Exception {
        JsonObject message = json("method", method);
        int id = ++number;
        message.addProperty("id", id);
        message.add("params", parameters);
        if (session != null) {
            message.addProperty("sessionId", session);
        }
        CompletableFuture<JsonObject> answer = new CompletableFuture<>();
        waiting.put(id, answer);
        socket.sendText(message.toString(), true).get(PATIENCE, TimeUnit.SECONDS);
        JsonObject whole = answer.get(PATIENCE, TimeUnit.SECONDS);
        if (whole.has("error")) {
            throw new IOException(method + ": " + whole.get("error"));
        }
        return whole.getAsJsonObject("result");
    }

    /** {@return what a script on the page comes to, as text} @param script the script */
    public String run(String script) {
        try {
            JsonObject parameters = json("expression", "String(" + script + ")");
            JsonObject result = ask("Runtime.evaluate", parameters);
            if (result.has("exceptionDetails")) {
                throw new AssertionError(script + ": " + result.get("exceptionDetails"));
            }
            return result.getAsJsonObject("result").get("value").getAsString();
        } catch (Exception e) {
            throw new AssertionError(script, e);
        }
    }

    /** Presses a key. @param key its name, as pages see it */
    public void press(String key) {
        try {
            for (String kind : List.of("rawKeyDown", "keyUp")) {
                JsonObject parameters = json("type", kind);
                parameters.addProperty("key", key);
                parameters.addProperty("code", key.length() == 1 ? "Key" + key.toUpperCase(java.util.Locale.ROOT) : key);
                ask("Input.dispatchKeyEvent", parameters);
            }
        } catch (Exception e) {
            throw new AssertionError(key, e);
        }
    }

    /** {@return errors and warnings of the console and of the browser} */
    public List<String> complaints() {
        return new ArrayList<>(complaints);
    }

    /** {@return what was fetched, the page itself left out} */
    public List<String> requests() {
        return requests.stream().filter(url -> !url.endsWith("/page.html")).toList();
    }

    @Override
    public void close() {
        try {
            socket.abort();
            process.destroy();
            process.waitFor(PATIENCE, TimeUnit.SECONDS);
            MoreFiles.deleteRecursively(profile, RecursiveDeleteOption.ALLOW_INSECURE);
        } catch (IOException | InterruptedException e) {
            // Only files of a profile in the temporary folder are left.
            process.destroyForcibly();
        }
    }

    private final class Listening implements WebSocket.Listener {
        private final StringBuilder sofar = new StringBuilder();

        @Override
        public CompletionStage<?> onText(WebSocket from, CharSequence data, boolean last) {
            sofar.append(data);
            if (last) {
                JsonObject message = JsonParser.parseString(sofar.toString()).getAsJsonObject();
                sofar.setLength(0);
                if (message.has("id")) {
                    waiting.remove(message.get("id").getAsInt()).complete(message);
                } else {
                    event(message.get("method").getAsString(), message.getAsJsonObject("params"));
                }
            }
            from.request(1);
            return null;
        }

        private void event(String method, JsonObject what) {
            switch (method) {
                case "Page.loadEventFired" -> loaded.complete(null);
                case "Runtime.exceptionThrown" -> complaints.add(what.toString());
                case "Log.entryAdded" -> complaints.add(what.toString());
                case "Runtime.consoleAPICalled" -> {
                    JsonArray said = what.getAsJsonArray("args");
                    complaints.add(what.get("type").getAsString() + " " + said);
                }
                case "Network.requestWillBeSent" -> requests.add(what.getAsJsonObject("request").get("url").getAsString());
                default -> { }
            }
        }
    }
}
