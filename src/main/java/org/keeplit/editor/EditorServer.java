package org.keeplit.editor;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.eclipse.lsp4j.CodeLensOptions;
import org.eclipse.lsp4j.CompletionOptions;
import org.eclipse.lsp4j.ExecuteCommandOptions;
import org.eclipse.lsp4j.ExecuteCommandParams;
import org.eclipse.lsp4j.InitializeParams;
import org.eclipse.lsp4j.InitializeResult;
import org.eclipse.lsp4j.RenameOptions;
import org.eclipse.lsp4j.SemanticTokensWithRegistrationOptions;
import org.eclipse.lsp4j.ServerCapabilities;
import org.eclipse.lsp4j.ServerInfo;
import org.eclipse.lsp4j.TextDocumentSyncKind;
import org.eclipse.lsp4j.DidChangeConfigurationParams;
import org.eclipse.lsp4j.DidChangeWatchedFilesParams;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.LanguageClientAware;
import org.eclipse.lsp4j.services.LanguageServer;
import org.eclipse.lsp4j.services.TextDocumentService;
import org.eclipse.lsp4j.services.WorkspaceService;
import org.keeplit.text.Versions;

/** The server: says what it can do, and hands each question to its handler. */
public final class EditorServer implements LanguageServer, LanguageClientAware, WorkspaceService {
    private final Texts texts = new Texts();
    private final CompletableFuture<Void> gone = new CompletableFuture<>();
    private boolean shutDown;

    /** Makes a server that nobody speaks to yet. */
    public EditorServer() {}

    @Override
    public void connect(LanguageClient client) {
        texts.connect(client);
    }

    @Override
    @SuppressWarnings("deprecation") // Editors that send no folders send the one root.
    public CompletableFuture<InitializeResult> initialize(InitializeParams params) {
        Optional<String> root = params.getWorkspaceFolders() != null && !params.getWorkspaceFolders().isEmpty()
                ? Optional.of(params.getWorkspaceFolders().get(0).getUri())
                : Optional.ofNullable(params.getRootUri());
        texts.root(root.flatMap(Desk::path));
        texts.refreshes(
                params.getCapabilities() != null
                        && params.getCapabilities().getWorkspace() != null
                        && params.getCapabilities().getWorkspace().getCodeLens() != null
                        && Boolean.TRUE.equals(params.getCapabilities().getWorkspace().getCodeLens().getRefreshSupport()),
                params.getCapabilities() != null
                        && params.getCapabilities().getWorkspace() != null
                        && params.getCapabilities().getWorkspace().getInlayHint() != null
                        && Boolean.TRUE.equals(params.getCapabilities().getWorkspace().getInlayHint().getRefreshSupport()));
        InitializeResult result = new InitializeResult(capabilities(), new ServerInfo("keeplit", Versions.PROGRAM));
        return CompletableFuture.completedFuture(result);
    }

    private static ServerCapabilities capabilities() {
        ServerCapabilities can = new ServerCapabilities();
        can.setTextDocumentSync(TextDocumentSyncKind.Full);
        can.setHoverProvider(true);
        can.setCompletionProvider(new CompletionOptions(false, List.of(" ", ",", ":")));
        can.setDefinitionProvider(true);
        can.setReferencesProvider(true);
        can.setRenameProvider(new RenameOptions(true));
        can.setDocumentSymbolProvider(true);
        can.setFoldingRangeProvider(true);
        can.setDocumentFormattingProvider(true);
        can.setCodeActionProvider(true);
        can.setInlayHintProvider(true);
        can.setCodeLensProvider(new CodeLensOptions(false));
        can.setSemanticTokensProvider(new SemanticTokensWithRegistrationOptions(Coloring.legend(), true));
        can.setExecuteCommandProvider(new ExecuteCommandOptions(List.of(Lensing.STORY)));
        return can;
    }

    @Override
    public CompletableFuture<Object> shutdown() {
        shutDown = true;
        texts.close();
        return CompletableFuture.completedFuture(null);
    }

    /** {@return whether the editor said that it goes} */
    public boolean isShutDown() {
        return shutDown;
    }

    @Override
    public void exit() {
        texts.close();
        gone.complete(null);
    }

    /** {@return is done once the editor has gone} */
    public CompletableFuture<Void> gone() {
        return gone;
    }

    @Override
    public TextDocumentService getTextDocumentService() {
        return texts;
    }

    @Override
    public WorkspaceService getWorkspaceService() {
        return this;
    }

    /** Shows the story of a procedure: its text is the answer. */
    @Override
    public CompletableFuture<Object> executeCommand(ExecuteCommandParams params) {
        List<Object> arguments = params.getArguments();
        if (!params.getCommand().equals(Lensing.STORY) || arguments == null || arguments.size() != 2) {
            return CompletableFuture.failedFuture(Texts.refused(
                    ResponseErrorCode.InvalidParams, "there is one command, " + Lensing.STORY + ", of a file and a procedure's name"));
        }
        return texts.story(arguments);
    }

    @Override
    public void didChangeConfiguration(DidChangeConfigurationParams params) {
        // There is nothing to set.
    }

    @Override
    public void didChangeWatchedFiles(DidChangeWatchedFilesParams params) {
        texts.readAgain();
    }
}
