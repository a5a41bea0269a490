package org.keeplit.editor;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.eclipse.lsp4j.CodeAction;
import org.eclipse.lsp4j.CodeActionContext;
import org.eclipse.lsp4j.CodeActionParams;
import org.eclipse.lsp4j.CodeLens;
import org.eclipse.lsp4j.CodeLensParams;
import org.eclipse.lsp4j.CompletionItem;
import org.eclipse.lsp4j.CompletionParams;
import org.eclipse.lsp4j.DefinitionParams;
import org.eclipse.lsp4j.Diagnostic;
import org.eclipse.lsp4j.DiagnosticSeverity;
import org.eclipse.lsp4j.DocumentFormattingParams;
import org.eclipse.lsp4j.DocumentSymbol;
import org.eclipse.lsp4j.DocumentSymbolParams;
import org.eclipse.lsp4j.ExecuteCommandParams;
import org.eclipse.lsp4j.FoldingRange;
import org.eclipse.lsp4j.FoldingRangeRequestParams;
import org.eclipse.lsp4j.FormattingOptions;
import org.eclipse.lsp4j.Hover;
import org.eclipse.lsp4j.HoverParams;
import org.eclipse.lsp4j.InlayHint;
import org.eclipse.lsp4j.InlayHintParams;
import org.eclipse.lsp4j.Location;
import org.eclipse.lsp4j.Position;
import org.eclipse.lsp4j.Range;
import org.eclipse.lsp4j.ReferenceContext;
import org.eclipse.lsp4j.ReferenceParams;
import org.eclipse.lsp4j.RenameParams;
import org.eclipse.lsp4j.SemanticTokensParams;
import org.eclipse.lsp4j.TextEdit;
import org.eclipse.lsp4j.WorkspaceEdit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The language server, as an editor uses it. */
@Timeout(value = 120, unit = TimeUnit.SECONDS)
class EditorTest {
    private static final String NETWORK =
            """
            language 1
            network spur  "Two switches, each with a bypass"
            uses overhead
            system voltage 12.47 kV, frequency 60 Hz
            source       bus          at s-0, phases ABC, supply grid
            switch       near         from s-0 to s-1, phases ABC, continuous 400 A, at pole-1
            bypass-switch near-by     from s-0 to s-1, phases ABC, ganged, open, at pole-1
            load         mill         at s-1, phases ABC, 300 kW, 12 customers
            """;

    private static final String RULES =
            """
            language 1
            rulebook supply  revision 1
            rule supplied
              always every load L is supplied
              says "{L} loses supply"
              because "Nobody goes without."
            """;

    private static final String HEAD =
            """
            language 1
            procedure P  revision 1
            title  "A switch out by its bypass"
            keeps  supply
            for    switch S and bypass-switch Y
            crew
              op   "Operator", in charge
              aid  "Second operator"
            proved on spur with near as S and near-by as Y
            starts with
              Y is open
            stage "All"
            """;

    private static final String GOOD = HEAD + "  bypass: op closes Y\n  open: op opens S\n";
    private static final String BROKEN = HEAD + "  open: op opens S\n  bypass: op closes Y\n";

    @TempDir
    Path folder;

    private Path file;
    private ScriptedClient client;

    @BeforeEach
    void open() throws IOException {
        Files.createDirectories(folder.resolve("shared"));
        Files.writeString(folder.resolve("shared/spur.network"), NETWORK);
        Files.writeString(folder.resolve("shared/supply.rules"), RULES);
        Files.copy(Path.of("shared/equipment/overhead.equipment"), folder.resolve("shared/overhead.equipment"));
        file = Files.writeString(folder.resolve("p.procedure"), GOOD);
        client = new ScriptedClient(folder);
        client.open(file);
    }

    @AfterEach
    void close() {
        client.close();
    }

    private static boolean finds(List<Diagnostic> all, String text) {
        return all.stream().anyMatch(d -> d.getMessage().getLeft().contains(text));
    }

    private String lens() {
        return lenses().get(0).getCommand().getTitle();
    }

    private List<? extends CodeLens> lenses() {
        return ScriptedClient.get(client.server().getTextDocumentService().codeLens(new CodeLensParams(ScriptedClient.id(file))));
    }

    private void proved() throws InterruptedException {
        for (int i = 0; i < 600 && lens().startsWith("being"); i++) {
            Thread.sleep(50);
        }
    }

    @Test
    void brokenTextIsToldAtOnceThenTheProof() throws InterruptedException {
        client.write(file, GOOD.replace("op opens S", "op opems S"));
        Diagnostic mistake = client.diagnostics(file, d -> !d.isEmpty()).get(0);
        assertEquals("unknown-verb", mistake.getCode().getLeft());
        assertEquals(13, mistake.getRange().getStart().getLine());
        assertEquals("not judged: the file has mistakes, or one that it reads has", lens());
        client.write(file, BROKEN);
        Diagnostic found = client.diagnostics(file, d -> finds(d, "mill loses supply")).get(0);
        assertEquals(DiagnosticSeverity.Error, found.getSeverity());
        assertEquals(new Position(12, 2), found.getRange().getStart());
        assertEquals("1  op opens near", found.getRelatedInformation().get(0).getMessage());
        assertEquals("broken: show the story", lens());
        CodeLens story = lenses().get(0);
        Object text = ScriptedClient.get(client.server().getWorkspaceService()
                .executeCommand(new ExecuteCommandParams(story.getCommand().getCommand(), story.getCommand().getArguments())));
        assertTrue(text.toString().contains("LOSES SUPPLY: mill"), text.toString());
        for (ExecuteCommandParams other : List.of(
                new ExecuteCommandParams("nope", story.getCommand().getArguments()),
                new ExecuteCommandParams(story.getCommand().getCommand(), List.of()))) {
            ExecutionException refused = assertThrows(
                    ExecutionException.class,
                    () -> client.server().getWorkspaceService().executeCommand(other).get(60, TimeUnit.SECONDS));
            assertTrue(refused.getMessage().contains("there is one command, keeplit.story"), refused.getMessage());
        }
        client.write(file, GOOD);
        assertEquals(List.of(), client.diagnostics(file));
        proved();
        assertEquals("proved in 3 states", lens());
    }

    @Test
    void anotherOpenFileCountsBeforeItIsSaved() {
        Path network = folder.resolve("shared/spur.network");
        client.open(network);
        client.write(network, NETWORK.replace("switch       near ", "switch       afar "));
        client.write(file, GOOD + "# again\n");
        assertTrue(finds(client.diagnostics(file, d -> !d.isEmpty()), "near"));
    }

    private String hover(String text) {
        Position at = client.write(file, text);
        return hoverAt(at);
    }

    private String hoverAt(Position at) {
        Hover hover = ScriptedClient.get(client.server().getTextDocumentService().hover(new HoverParams(ScriptedClient.id(file), at)));
        return hover == null ? "" : hover.getContents().getRight().getValue();
    }

    @Test
    void hoverTellsTheDeviceAndItsState() throws InterruptedException {
        Position at = client.write(file, GOOD.replace("op opens S", "op opens %S"));
        client.diagnostics(file);
        proved();
        String told = hoverAt(at);
        assertTrue(told.contains("**near**, switch, phases ABC, from s-0 to s-1"), told);
        assertTrue(told.contains("continuous 400 A"), told);
        assertTrue(told.contains("Before this step: near on phase A closed") || told.contains("Before this step: near closed"), told);
        assertTrue(told.contains("After it: near on phase A open") || told.contains("After it: near open"), told);
        assertEquals("**op**, Operator", hover(GOOD.replace("bypass: op", "bypass: o%p")).lines().findFirst().orElse(""));
        assertTrue(hover(GOOD.replace("keeps  supply", "keeps  su%pply")).startsWith("rulebook **supply**"));
        assertEquals("", hover(GOOD.replace("title", "ti%tle")));
    }

    private List<String> completion(String text) {
        Position at = client.write(file, text);
        return ScriptedClient.get(client.server().getTextDocumentService().completion(new CompletionParams(ScriptedClient.id(file), at)))
                .getLeft().stream().map(CompletionItem::getLabel).collect(Collectors.toList());
    }

    @Test
    void completionFitsTheVerbAndTheKind() {
        List<String> people = completion(GOOD + "  %\n");
        assertTrue(people.containsAll(List.of("op", "aid", "together")), people.toString());
        List<String> verbs = completion(GOOD + "  op %\n");
        assertTrue(verbs.containsAll(List.of("opens", "closes", "proves", "checks")), verbs.toString());
        // What a bypass switch can do a switch can do, too; neither is a load.
        List<String> objects = completion(GOOD + "  op opens %\n");
        assertTrue(objects.containsAll(List.of("S", "Y", "near", "near-by")) && !objects.contains("mill"), objects.toString());
        assertEquals(List.of("supply"), completion(GOOD.replace("keeps  supply", "keeps  %")));
        assertEquals(List.of("spur"), completion(GOOD.replace("proved on spur with", "proved on % with")));
        assertTrue(completion(GOOD + "variant P-a \"X\" of P\n  step %\n").containsAll(List.of("bypass", "open")));
        assertTrue(completion(GOOD + "variant P-a \"X\" of P\n  must fail on %\n").containsAll(List.of("supplied", "stop")));
        assertTrue(completion(GOOD + "  op opens S on %\n").containsAll(List.of("A", "B", "C")));
    }

    private List<Location> definition(String text) {
        Position at = client.write(file, text);
        return ScriptedClient.get(client.server().getTextDocumentService().definition(new DefinitionParams(ScriptedClient.id(file), at)))
                .getLeft().stream().map(l -> (Location) l).toList();
    }

    @Test
    void definitionsAndReferences() {
        Location near = definition(GOOD.replace("with near as", "with n%ear as")).get(0);
        assertTrue(near.getUri().endsWith("shared/spur.network"), near.getUri());
        assertEquals(5, near.getRange().getStart().getLine());
        assertEquals(4, definition(GOOD.replace("opens S", "opens %S")).get(0).getRange().getStart().getLine());
        Position at = client.write(file, GOOD.replace("opens S", "opens %S"));
        List<? extends Location> all = ScriptedClient.get(client.server().getTextDocumentService()
                .references(new ReferenceParams(ScriptedClient.id(file), at, new ReferenceContext(true))));
        assertEquals(3, all.size());
        assertTrue(definition(GOOD.replace("Operator", "Oper%ator")).isEmpty());
    }

    private WorkspaceEdit rename(String text, String to) {
        Position at = client.write(file, text);
        return ScriptedClient.get(client.server().getTextDocumentService().rename(new RenameParams(ScriptedClient.id(file), at, to)));
    }

    @Test
    void renamingReachesEveryFileAndMakesNoMistake() {
        WorkspaceEdit edit = rename(GOOD.replace("with near as", "with n%ear as"), "first");
        assertEquals(2, edit.getChanges().size());
        assertEquals(1, edit.getChanges().get(ScriptedClient.uri(file)).size());
        String changed = apply(GOOD, rename(GOOD.replace("op opens S", "op opens %S"), "Switch").getChanges().get(ScriptedClient.uri(file)));
        assertEquals(GOOD.replace("switch S and", "switch Switch and").replace("as S and", "as Switch and").replace("opens S", "opens Switch"), changed);
        for (String refused : List.of("Y", "small", "1st", "phase")) {
            assertThrows(AssertionError.class, () -> rename(GOOD.replace("op opens S", "op opens %S"), refused), refused);
        }
    }

    private static String apply(String text, List<TextEdit> edits) {
        List<String> lines = text.lines().collect(Collectors.toList());
        edits.stream()
                .sorted(Comparator.comparing((TextEdit e) -> e.getRange().getStart().getLine())
                        .thenComparing(e -> e.getRange().getStart().getCharacter()).reversed())
                .forEach(e -> {
                    int line = e.getRange().getStart().getLine();
                    String was = lines.get(line);
                    lines.set(line, was.substring(0, e.getRange().getStart().getCharacter()) + e.getNewText()
                            + was.substring(e.getRange().getEnd().getCharacter()));
                });
        return String.join("\n", lines) + "\n";
    }

    @Test
    void quickFixesWriteWhatWasMeant() {
        String text = GOOD.replace("op opens S", "op opems S");
        client.write(file, text);
        client.diagnostics(file, d -> !d.isEmpty());
        List<CodeAction> actions = ScriptedClient.get(client.server().getTextDocumentService()
                        .codeAction(new CodeActionParams(ScriptedClient.id(file), new Range(new Position(13, 0), new Position(13, 20)), new CodeActionContext(List.of()))))
                .stream().map(a -> a.getRight()).toList();
        assertEquals(1, actions.size(), actions.toString());
        assertEquals(GOOD, apply(text, actions.get(0).getEdit().getChanges().get(ScriptedClient.uri(file))));
    }

    @Test
    void symbolsFoldingFormattingAndColours() {
        List<DocumentSymbol> symbols = ScriptedClient.get(client.server().getTextDocumentService()
                        .documentSymbol(new DocumentSymbolParams(ScriptedClient.id(file))))
                .stream().map(s -> s.getRight()).toList();
        assertEquals(List.of("P"), symbols.stream().map(DocumentSymbol::getName).toList());
        DocumentSymbol stage = symbols.get(0).getChildren().get(0);
        assertEquals("All", stage.getName());
        assertEquals(List.of("bypass", "open"), stage.getChildren().stream().map(DocumentSymbol::getName).toList());
        List<FoldingRange> folds = ScriptedClient.get(client.server().getTextDocumentService()
                .foldingRange(new FoldingRangeRequestParams(ScriptedClient.id(file))));
        assertTrue(folds.stream().anyMatch(f -> f.getStartLine() == 5 && f.getEndLine() == 7), folds.toString());
        client.write(file, GOOD.replace("  open: op", "open:op"));
        List<? extends TextEdit> edits = ScriptedClient.get(client.server().getTextDocumentService()
                .formatting(new DocumentFormattingParams(ScriptedClient.id(file), new FormattingOptions(4, false))));
        assertEquals(GOOD, edits.get(0).getNewText());
        List<Integer> colours = ScriptedClient.get(client.server().getTextDocumentService()
                .semanticTokensFull(new SemanticTokensParams(ScriptedClient.id(file)))).getData();
        // The first line: a keyword of eight letters, then a number.
        assertEquals(List.of(0, 0, 8, 0, 0, 0, 9, 1, 3, 0), colours.subList(0, 10));
        assertEquals(0, colours.size() % 5);
    }

    private static final String EVENTS =
            """
            language 1
            rulebook mishaps  revision 1

            event switch-trips
              any switch S
              when S is closed
              then S opens
              says "{S} opens by itself"

            rule still-supplied
              always every load L is supplied
              even if switch-trips
              says "{L} loses supply"
              because "Nobody goes without."
            """;

    @Test
    void eventsOfRulebooksHaveNames() throws IOException {
        file = Files.writeString(folder.resolve("shared/mishaps.rules"), EVENTS);
        client.open(file);
        assertEquals(List.of(), client.diagnostics(file));
        assertEquals(List.of("switch-trips"), completion(EVENTS.replace("even if switch-trips", "even if %")));
        assertTrue(completion(EVENTS.replace("then S opens", "%")).containsAll(List.of("any", "when", "then")));
        assertEquals(List.of("S"), completion(EVENTS.replace("then S opens", "then %")));
        assertTrue(completion(EVENTS.replace("then S opens", "then S %")).containsAll(List.of("opens", "trips", "fails to trip")));
        assertEquals(3, definition(EVENTS.replace("if switch-trips", "if switch%-trips")).get(0).getRange().getStart().getLine());
        assertEquals(4, definition(EVENTS.replace("then S", "then %S")).get(0).getRange().getStart().getLine());
        Position at = client.write(file, EVENTS.replace("if switch-trips", "if switch%-trips"));
        Hover hover = ScriptedClient.get(client.server().getTextDocumentService().hover(new HoverParams(ScriptedClient.id(file), at)));
        String told = hover.getContents().getRight().getValue();
        assertTrue(told.contains("{S} opens by itself") && told.contains("still-supplied"), told);
        WorkspaceEdit edit = rename(EVENTS.replace("event switch", "event swi%tch"), "opens-alone");
        assertEquals(EVENTS.replace("switch-trips", "opens-alone"), apply(EVENTS, edit.getChanges().get(ScriptedClient.uri(file))));
        client.write(file, EVENTS);
        List<DocumentSymbol> symbols = ScriptedClient.get(client.server().getTextDocumentService()
                        .documentSymbol(new DocumentSymbolParams(ScriptedClient.id(file))))
                .stream().map(s -> s.getRight()).toList();
        assertEquals(List.of("switch-trips", "still-supplied"), symbols.get(0).getChildren().stream().map(DocumentSymbol::getName).toList());
        List<Integer> colours = ScriptedClient.get(client.server().getTextDocumentService()
                .semanticTokensFull(new SemanticTokensParams(ScriptedClient.id(file)))).getData();
        // The name of the event where it is declared: six columns in, a function, declared.
        assertTrue(Collections.indexOfSubList(colours, List.of(6, 12, 11, 1)) > 0, colours.toString());
    }

    @Test
    void hintsTellTheStateThatComes() throws InterruptedException {
        client.diagnostics(file);
        proved();
        List<InlayHint> hints = ScriptedClient.get(client.server().getTextDocumentService()
                .inlayHint(new InlayHintParams(ScriptedClient.id(file), new Range(new Position(0, 0), new Position(99, 0)))));
        assertEquals(2, hints.size());
        assertEquals("→ near-by closed", hints.get(0).getLabel().getLeft());
        assertEquals(new Position(12, "  bypass: op closes Y".length()), hints.get(0).getPosition());
    }

    @Test
    void allShippedFilesCanBeOpened() throws IOException {
        try (var files = Files.list(Path.of("procedures"))) {
            for (Path shipped : files.sorted().limit(6).map(Path::toAbsolutePath).toList()) {
                client.open(shipped);
                assertFalse(client.diagnostics(shipped).stream().anyMatch(d -> d.getSeverity() == DiagnosticSeverity.Error));
                assertNotNull(ScriptedClient.get(client.server().getTextDocumentService()
                        .semanticTokensFull(new SemanticTokensParams(ScriptedClient.id(shipped)))));
            }
        }
    }

    @Test
    void afterItsEndNothingIsAnswered() {
        client.write(file, GOOD);
        ScriptedClient.get(client.server().shutdown());
        client.write(file, GOOD + "\n");
        ExecutionException refused = assertThrows(
                ExecutionException.class,
                () -> client.server()
                        .getTextDocumentService()
                        .hover(new HoverParams(ScriptedClient.id(file), new Position(1, 1)))
                        .get(60, TimeUnit.SECONDS));
        assertTrue(refused.getMessage().contains("the server was shut down"), refused.getMessage());
    }
}
