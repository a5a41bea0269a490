package org.keeplit.editor;

import java.io.IOException;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Predicate;
import org.eclipse.lsp4j.ClientCapabilities;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.InitializedParams;
import org.eclipse.lsp4j.MessageActionItem;
import org.eclipse.lsp4j.MessageParams;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.ShowMessageRequestParams;
import org.eclipse.lsp4j.TextDocumentContentChangeEvent;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextDocumentItem;
import org.eclipse.lsp4j.VersionedTextDocumentIdentifier;
import org.eclipse.lsp4j.WorkspaceFolder;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.launch.LSPLauncher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageServer;

/** An editor that does what a test says, over the real protocol. A {@code %} in a text marks where its cursor is. */
final class ScriptedClient implements LanguageClient, AutoCloseable {
    private final EditorServer server = new EditorServer();
    private final LanguageServer remote;
    private final List<Future<Void>> listening = new ArrayList<>();
    private final Map<String, PublishDiagnosticsParams> told = new ConcurrentHashMap<>();
    private final Map<String, Integer> versions = new ConcurrentHashMap<>();
    final InitializeResult can;

    ScriptedClient(Path folder) {
        try {
            PipedInputStream toServer = new PipedInputStream(1 << 20);
            PipedInputStream toClient = new PipedInputStream(1 << 20);
            PipedOutputStream fromClient = new PipedOutputStream(toServer);
            PipedOutputStream fromServer = new PipedOutputStream(toClient);
            Launcher<LanguageClient> there = Protocol.launcher(server, toServer, fromServer);
            server.connect(there.getRemoteProxy());
            Launcher<LanguageServer> here = LSPLauncher.createClientLauncher(this, toClient, fromClient);
            listening.add(there.startListening());
            listening.add(here.startListening());
            remote = here.getRemoteProxy();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        InitializeParams params = new InitializeParams();
        params.setCapabilities(new ClientCapabilities());
        params.setWorkspaceFolders(List.of(new WorkspaceFolder(folder.toUri().toString(), "test")));
        can = get(remote.initialize(params));
        remote.initialized(new InitializedParams());
    }

    LanguageServer server() {
        return remote;
    }

    static <T> T get(Future<T> future) {
        try {
            return future.get(60, TimeUnit.SECONDS);
        } catch (InterruptedException | ExecutionException | TimeoutException e) {
            throw new AssertionError(e);
        }
    }

    static String uri(Path file) {
        return file.toUri().toString();
    }

    static TextDocumentIdentifier id(Path file) {
        return new TextDocumentIdentifier(uri(file));
    }

    /** Opens a file with what is on the disk. */
    void open(Path file) {
        try {
            versions.put(uri(file), 1);
            remote.getTextDocumentService()
                    .didOpen(new DidOpenTextDocumentParams(new TextDocumentItem(uri(file), "keeplit", 1, Files.readString(file))));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Writes another text, its mark left out. @return where the mark was */
    Position write(Path file, String text) {
        int at = text.indexOf('%');
        String plain = at < 0 ? text : text.substring(0, at) + text.substring(at + 1);
        int version = versions.merge(uri(file), 1, Integer::sum);
        remote.getTextDocumentService().didChange(new DidChangeTextDocumentParams(
                new VersionedTextDocumentIdentifier(uri(file), version), List.of(new TextDocumentContentChangeEvent(plain))));
        String before = text.substring(0, Math.max(0, at));
        return new Position((int) before.chars().filter(c -> c == '\n').count(), before.length() - before.lastIndexOf('\n') - 1);
    }

    /** {@return the diagnostics of the newest text, once they are so} */
    List<Diagnostic> diagnostics(Path file, Predicate<List<Diagnostic>> so) {
        long until = System.nanoTime() + 60_000_000_000L;
        synchronized (told) {
            while (System.nanoTime() < until) {
                PublishDiagnosticsParams now = told.get(uri(file));
                if (now != null && now.getVersion() != null && now.getVersion().equals(versions.get(uri(file))) && so.test(now.getDiagnostics())) {
                    return now.getDiagnostics();
                }
                try {
                    told.wait(200);
                } catch (InterruptedException e) {
                    throw new AssertionError(e);
                }
            }
        }
        throw new AssertionError("not told: " + told.get(uri(file)));
    }

    List<Diagnostic> diagnostics(Path file) {
        return diagnostics(file, d -> true);
    }

    @Override
    public void publishDiagnostics(PublishDiagnosticsParams params) {
        synchronized (told) {
            told.put(params.getUri(), params);
            told.notifyAll();
        }
    }

    @Override
    public void telemetryEvent(Object event) {}

    @Override
    public void showMessage(MessageParams message) {}

    @Override
    public java.util.concurrent.CompletableFuture<MessageActionItem> showMessageRequest(ShowMessageRequestParams request) {
        return java.util.concurrent.CompletableFuture.completedFuture(null);
    }

    @Override
    public void logMessage(MessageParams message) {}

    @Override
    public void close() {
        get(remote.shutdown());
        remote.exit();
        listening.forEach(l -> l.cancel(true));
    }
}
