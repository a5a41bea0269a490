package org.keeplit.command;

import java.io.InputStream;
import java.io.PrintStream;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import org.eclipse.lsp4j.jsonrpc.Launcher;
import org.eclipse.lsp4j.services.LanguageClient;
import org.keeplit.editor.EditorServer;
import org.keeplit.editor.Protocol;
import picocli.CommandLine;

/** {@code editor}: the language server, over standard input and output. */
@CommandLine.Command(
        name = "editor",
        description = "Answer an editor (Language Server Protocol) over standard input and output; editors start this, people do not.",
        mixinStandardHelpOptions = true)
final class EditorCommand implements Callable<Integer> {
    @CommandLine.Option(names = "--stdio", hidden = true, description = "as editors say it; there is no other way")
    private boolean stdio;

    @Override
    public Integer call() {
        InputStream in = System.in;
        PrintStream out = System.out;
        // Whatever else would print must not get between the messages.
        System.setOut(System.err);
        EditorServer server = new EditorServer();
        Launcher<LanguageClient> launcher = Protocol.launcher(server, in, out);
        server.connect(launcher.getRemoteProxy());
        Future<Void> listening = launcher.startListening();
        // The input ends, or the editor says that it goes and leaves the input open.
        CompletableFuture.anyOf(server.gone(), CompletableFuture.runAsync(() -> await(listening))).join();
        return server.isShutDown() ? ExitCode.PROVED : ExitCode.BROKEN;
    }

    private static void await(Future<Void> listening) {
        try {
            listening.get();
        } catch (ExecutionException ended) {
            // The input broke off: the editor has gone.
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }
}
