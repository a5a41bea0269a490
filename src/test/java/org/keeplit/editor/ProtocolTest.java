package org.keeplit.editor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Messages that no good editor sends: each gets the answer that the protocol has for it, and the server listens on. */
@Timeout(value = 60, unit = TimeUnit.SECONDS)
class ProtocolTest {
    private static final String HOVER =
            "{\"jsonrpc\":\"2.0\",\"id\":%s,\"method\":\"textDocument/hover\",\"params\":{\"textDocument\":{\"uri\":\"file:///none.procedure\"},\"position\":{\"line\":0,\"character\":0}}}";

    private final PipedOutputStream toServer = new PipedOutputStream();
    private final PipedInputStream fromServer = new PipedInputStream(1 << 20);
    private Future<Void> listening;

    @BeforeEach
    void start() throws IOException {
        EditorServer server = new EditorServer();
        Launcher<LanguageClient> launcher =
                Protocol.launcher(server, new PipedInputStream(toServer, 1 << 20), new PipedOutputStream(fromServer));
        server.connect(launcher.getRemoteProxy());
        listening = launcher.startListening();
    }

    @AfterEach
    void stop() throws IOException {
        toServer.close();
        listening.cancel(true);
    }

    private void send(String json) throws IOException {
        byte[] body = json.getBytes(StandardCharsets.UTF_8);
        toServer.write(("Content-Length: " + body.length + "\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
        toServer.write(body);
        toServer.flush();
    }

    private JsonObject answer() throws IOException {
        int length = -1;
        StringBuilder line = new StringBuilder();
        while (true) {
            int c = fromServer.read();
            if (c == '\n') {
                String head = line.toString().strip();
                if (head.isEmpty()) {
                    break;
                } else if (head.startsWith("Content-Length:")) {
                    length = Integer.parseInt(head.substring(15).strip());
                }
                line.setLength(0);
            } else {
                line.append((char) c);
            }
        }
        return JsonParser.parseString(new String(fromServer.readNBytes(length), StandardCharsets.UTF_8)).getAsJsonObject();
    }

    private void assertError(int code, String words) throws IOException {
        JsonObject answer = answer();
        assertTrue(answer.has("error"), answer::toString);
        assertEquals(code, answer.getAsJsonObject("error").get("code").getAsInt(), answer::toString);
        assertTrue(answer.getAsJsonObject("error").get("message").getAsString().contains(words), answer::toString);
        assertFalse(answer.toString().contains("Exception"), answer::toString);
        assertFalse(answer.toString().contains("\\tat "), answer::toString);
    }

    private void begin() throws IOException {
        send("{\"jsonrpc\":\"2.0\",\"id\":1,\"method\":\"initialize\",\"params\":{\"capabilities\":{}}}");
        assertTrue(answer().has("result"));
    }

    @Test
    void aCallBeforeInitializeWasAnswered() throws IOException {
        send(HOVER.formatted("7"));
        assertError(-32002, "the first request is initialize");
        send("{\"jsonrpc\":\"2.0\",\"id\":8,\"method\":\"no/such\",\"params\":{}}");
        assertError(-32002, "initialize");
        begin();
        send("{\"jsonrpc\":\"2.0\",\"id\":9,\"method\":\"initialize\",\"params\":{\"capabilities\":{}}}");
        assertError(-32600, "once");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", ",\"params\":null"})
    void nullParametersOfInitializeWereAnInternalError(String params) throws IOException {
        send("{\"jsonrpc\":\"2.0\",\"id\":1,\"method\":\"initialize\"" + params + "}");
        assertError(-32602, "params is missing from initialize");
        begin();
    }

    @ParameterizedTest
    @ValueSource(strings = {
        "textDocument/hover", "textDocument/completion", "textDocument/definition", "textDocument/references", "textDocument/rename",
        "textDocument/documentSymbol", "textDocument/foldingRange", "textDocument/formatting", "textDocument/codeAction",
        "textDocument/inlayHint", "textDocument/codeLens", "textDocument/semanticTokens/full", "textDocument/prepareRename",
        "workspace/executeCommand"
    })
    void nullParametersWereAnInternalError(String method) throws IOException {
        begin();
        String head = "{\"jsonrpc\":\"2.0\",\"id\":2,\"method\":\"" + method + "\"";
        send(head + "}");
        assertError(-32602, "params is missing from " + method);
        send(head + ",\"params\":null}");
        assertError(-32602, "params is missing from " + method);
        send(head + ",\"params\":{}}");
        assertError(-32602, "is missing from " + method);
        send(head + ",\"params\":[1,2]}");
        assertError(-32602, "the parameters of " + method);
        if (!method.startsWith("workspace")) {
            send(head + ",\"params\":{\"textDocument\":{\"uri\":null},\"position\":null}}");
            assertError(-32602, "is missing from " + method);
        }
        send("{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didOpen\",\"params\":null}");
        send(HOVER.formatted("\"still there\""));
        assertEquals("still there", answer().get("id").getAsString());
    }

    @Test
    void anUnknownMethodWasAnsweredWithAStackTrace() throws IOException {
        begin();
        send("{\"jsonrpc\":\"2.0\",\"id\":3,\"method\":\"no/such\",\"params\":{}}");
        assertError(-32601, "there is no method no/such");
        send("{\"jsonrpc\":\"2.0\",\"id\":4,\"method\":\"textDocument/implementation\",\"params\":{\"textDocument\":{\"uri\":\"file:///x\"},\"position\":{\"line\":0,\"character\":0}}}");
        assertError(-32601, "textDocument/implementation");
    }

    @ParameterizedTest
    @ValueSource(strings = {"[", "{\"a\":"})
    void veryDeepJsonMadeTheServerDeaf(String open) throws IOException {
        begin();
        String close = open.equals("[") ? "]" : "}";
        String deep = open.repeat(200_000) + (open.equals("[") ? "" : "1") + close.repeat(200_000);
        send("{\"jsonrpc\":\"2.0\",\"id\":5,\"method\":\"textDocument/hover\",\"params\":" + deep + "}");
        assertError(-32700, "nested deeper than 100 levels");
        send("{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didOpen\",\"params\":" + deep + "}");
        assertError(-32700, "nested deeper");
        send(HOVER.formatted("6"));
        assertEquals(6, answer().get("id").getAsInt());
    }

    @Test
    void whatIsNoJsonIsToldSo() throws IOException {
        begin();
        send("{\"jsonrpc\":\"2.0\",\"id\":16,\"method\"");
        assertError(-32700, "the message is no JSON");
        send(HOVER.formatted("6"));
        assertEquals(6, answer().get("id").getAsInt());
    }
}
