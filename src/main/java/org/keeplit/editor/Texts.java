package org.keeplit.editor;

import com.google.gson.JsonPrimitive;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.function.Function;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.CodeLens;
import org.eclipse.lsp4j.CodeLensParams;
import org.eclipse.lsp4j.Command;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionList;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.DidChangeTextDocumentParams;
import org.eclipse.lsp4j.DidCloseTextDocumentParams;
import org.eclipse.lsp4j.DidOpenTextDocumentParams;
import org.eclipse.lsp4j.DidSaveTextDocumentParams;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.LocationLink;
import org.eclipse.lsp4j.MarkupContent;
import org.eclipse.lsp4j.MarkupKind;
import org.eclipse.lsp4j.PrepareRenameDefaultBehavior;
import org.eclipse.lsp4j.PrepareRenameParams;
import org.eclipse.lsp4j.PrepareRenameResult;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.PublishDiagnosticsParams;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.SemanticTokens;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.SymbolInformation;
import org.eclipse.lsp4j.TextDocumentIdentifier;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.eclipse.lsp4j.jsonrpc.ResponseErrorException;
import org.eclipse.lsp4j.jsonrpc.messages.Either;
import org.eclipse.lsp4j.jsonrpc.messages.Either3;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseError;
import org.eclipse.lsp4j.jsonrpc.messages.ResponseErrorCode;
import org.eclipse.lsp4j.services.LanguageClient;
import org.eclipse.lsp4j.services.TextDocumentService;

/** Keeps the open files, and answers what is asked of them, in the thread that reads: always of the newest text. */
final class Texts implements TextDocumentService {
    private final Desk desk = new Desk();
    private final Map<String, Integer> newest = new ConcurrentHashMap<>();
    private final Map<String, Proved> proofs = new ConcurrentHashMap<>();
    private final ExecutorService reading = Executors.newSingleThreadExecutor(work -> {
        Thread one = new Thread(work, "keeplit reading");
        one.setDaemon(true);
        return one;
    });
    private final Proofs proving = new Proofs(this::proved);
    private LanguageClient client;
    private boolean lensesRefresh;
    private boolean hintsRefresh;

    void connect(LanguageClient editor) {
        client = editor;
    }

    void root(Optional<Path> folder) {
        later(() -> desk.root(folder));
    }

    /** Says what the editor can be asked to ask again. */
    void refreshes(boolean lenses, boolean hints) {
        lensesRefresh = lenses;
        hintsRefresh = hints;
    }

    void close() {
        proving.close();
        reading.shutdown();
    }

    @Override
    public void didOpen(DidOpenTextDocumentParams params) {
        read(params.getTextDocument().getUri(), params.getTextDocument().getVersion(), params.getTextDocument().getText());
    }

    @Override
    public void didChange(DidChangeTextDocumentParams params) {
        String text = params.getContentChanges().get(params.getContentChanges().size() - 1).getText();
        read(params.getTextDocument().getUri(), params.getTextDocument().getVersion(), text);
    }

    @Override
    public void didSave(DidSaveTextDocumentParams params) {
        readAgain();
    }

    @Override
    public void didClose(DidCloseTextDocumentParams params) {
        String uri = params.getTextDocument().getUri();
        proving.stop(uri);
        newest.remove(uri);
        proofs.remove(uri);
        later(() -> {
            desk.close(uri);
            client.publishDiagnostics(new PublishDiagnosticsParams(uri, List.of()));
        });
    }

    /** Reads a text, unless a newer one has come by then; its proof begins behind it. */
    private void read(String uri, int version, String text) {
        newest.put(uri, version);
        proving.stop(uri);
        later(() -> {
            if (newest.getOrDefault(uri, version) == version) {
                desk.read(uri, version, text).ifPresent(page -> {
                    publish(page);
                    proving.begin(page);
                });
            }
        });
    }

    /** Reads every open file again: something on the disk has changed. */
    void readAgain() {
        later(() -> List.copyOf(newest.keySet()).forEach(uri -> desk.page(uri).ifPresent(page -> {
            Proved before = proofs.getOrDefault(uri, Proved.NOTHING);
            Optional<Page> again = desk.read(uri, page.version(), page.text());
            boolean changed = again.isPresent() && !again.get().library().sources().equals(page.library().sources());
            if (changed || before == Proved.NOTHING) {
                proofs.remove(uri);
                again.ifPresent(this::publish);
                again.ifPresent(proving::begin);
            }
        })));
    }

    private void publish(Page page) {
        Proved proved = proofs.getOrDefault(page.uri(), Proved.NOTHING);
        PublishDiagnosticsParams params =
                new PublishDiagnosticsParams(page.uri(), new Diagnosing(desk.places()).of(page, proved), page.version());
        client.publishDiagnostics(params);
    }

    /** A verdict has come: it is told, if it is of the newest text. */
    private void proved(Page page, Proved proved) {
        later(() -> {
            if (newest.getOrDefault(page.uri(), -1) == proved.version()) {
                proofs.put(page.uri(), proved);
                desk.page(page.uri()).ifPresent(this::publish);
                refresh();
            }
        });
    }

    /** Does something in the thread that reads; nothing once the server was shut down. */
    private void later(Runnable work) {
        try {
            reading.execute(work);
        } catch (RejectedExecutionException closed) {
            // Nobody waits for it any more.
        }
    }

    private void refresh() {
        if (lensesRefresh) {
            client.refreshCodeLenses();
        }
        if (hintsRefresh) {
            client.refreshInlayHints();
        }
    }

    private <T> CompletableFuture<T> answer(TextDocumentIdentifier file, T nothing, Function<Page, T> work) {
        try {
            return CompletableFuture.supplyAsync(() -> desk.page(file.getUri()).map(work).orElse(nothing), reading);
        } catch (RejectedExecutionException closed) {
            return CompletableFuture.failedFuture(refused(ResponseErrorCode.InvalidRequest, "the server was shut down"));
        }
    }

    private Optional<Name> name(Page page, Names names, Position at) {
        return names.at(page.name(), at.getLine() + 1, at.getCharacter() + 1);
    }

    private Proved proof(Page page) {
        return proofs.getOrDefault(page.uri(), Proved.NOTHING);
    }

    @Override
    public CompletableFuture<Hover> hover(HoverParams params) {
        return answer(params.getTextDocument(), null, page -> {
            Names names = desk.names(page);
            return name(page, names, params.getPosition())
                    .flatMap(name -> new Hovering(page, names, proof(page))
                            .of(name, params.getPosition().getLine() + 1)
                            .map(text -> new Hover(new MarkupContent(MarkupKind.MARKDOWN, text), Places.range(name.span()))))
                    .orElse(null);
        });
    }

    @Override
    public CompletableFuture<Either<List<CompletionItem>, CompletionList>> completion(CompletionParams params) {
        return answer(params.getTextDocument(), Either.forLeft(List.of()), page -> Either.forLeft(new Completing(page, desk.allNames(page))
                .at(params.getPosition().getLine() + 1, params.getPosition().getCharacter() + 1)));
    }

    @Override
    public CompletableFuture<Either<List<? extends Location>, List<? extends LocationLink>>> definition(DefinitionParams params) {
        return answer(params.getTextDocument(), Either.forLeft(List.of()), page -> {
            Names names = desk.names(page);
            List<Location> found = name(page, names, params.getPosition())
                    .map(name -> Defining.definition(name, names, desk.places()))
                    .orElse(List.of());
            return Either.forLeft(found);
        });
    }

    @Override
    public CompletableFuture<List<? extends Location>> references(ReferenceParams params) {
        return answer(params.getTextDocument(), List.of(), page -> {
            Names names = desk.allNames(page);
            return name(page, names, params.getPosition())
                    .map(name -> Defining.references(name, names, params.getContext().isIncludeDeclaration(), desk.places()))
                    .orElse(List.of());
        });
    }

    @Override
    public CompletableFuture<Either3<Range, PrepareRenameResult, PrepareRenameDefaultBehavior>> prepareRename(PrepareRenameParams params) {
        return answer(params.getTextDocument(), null, page -> name(page, desk.names(page), params.getPosition())
                .map(name -> Either3.<Range, PrepareRenameResult, PrepareRenameDefaultBehavior>forFirst(Places.range(name.span())))
                .orElse(null));
    }

    @Override
    public CompletableFuture<WorkspaceEdit> rename(RenameParams params) {
        return answer(params.getTextDocument(), null, page -> {
            Names names = desk.allNames(page);
            Optional<Name> name = name(page, names, params.getPosition());
            if (name.isEmpty()) {
                throw refused(ResponseErrorCode.RequestFailed, "there is nothing here that has a name");
            }
            try {
                return new Renaming(names, desk.places(), desk.texts()).rename(name.get(), params.getNewName());
            } catch (Renaming.Refused no) {
                throw refused(ResponseErrorCode.RequestFailed, no.getMessage());
            }
        });
    }

    /** {@return a refusal in words of the protocol} @param code what sort it is @param why in words */
    static ResponseErrorException refused(ResponseErrorCode code, String why) {
        return new ResponseErrorException(new ResponseError(code, why, null));
    }

    @Override
    public CompletableFuture<List<Either<SymbolInformation, DocumentSymbol>>> documentSymbol(DocumentSymbolParams params) {
        return answer(params.getTextDocument(), List.of(), page -> Outlining.of(page).stream()
                .map(Either::<SymbolInformation, DocumentSymbol>forRight)
                .toList());
    }

    @Override
    public CompletableFuture<List<FoldingRange>> foldingRange(FoldingRangeRequestParams params) {
        return answer(params.getTextDocument(), List.of(), Folding::of);
    }

    @Override
    public CompletableFuture<List<? extends TextEdit>> formatting(DocumentFormattingParams params) {
        return answer(params.getTextDocument(), List.of(), Formatting::of);
    }

    @Override
    public CompletableFuture<List<Either<Command, CodeAction>>> codeAction(CodeActionParams params) {
        return answer(params.getTextDocument(), List.of(), page -> Fixing.of(page, params.getRange(), new Diagnosing(desk.places())));
    }

    @Override
    public CompletableFuture<List<InlayHint>> inlayHint(InlayHintParams params) {
        return answer(params.getTextDocument(), List.of(), page -> Hinting.of(page, proof(page), params.getRange()));
    }

    @Override
    public CompletableFuture<List<? extends CodeLens>> codeLens(CodeLensParams params) {
        return answer(params.getTextDocument(), List.of(), page -> Lensing.of(page, proof(page)));
    }

    @Override
    public CompletableFuture<SemanticTokens> semanticTokensFull(SemanticTokensParams params) {
        return answer(params.getTextDocument(), new SemanticTokens(List.of()), page -> Coloring.of(page, desk.names(page)));
    }

    /** {@return the story of a procedure} @param arguments the page's reference and the procedure's name */
    CompletableFuture<Object> story(List<Object> arguments) {
        String uri = word(arguments.get(0));
        String name = word(arguments.get(1));
        return CompletableFuture.completedFuture(Lensing.story(proofs.getOrDefault(uri, Proved.NOTHING), name));
    }

    private static String word(Object argument) {
        return argument instanceof JsonPrimitive json ? json.getAsString() : String.valueOf(argument);
    }
}
