package org.keeplit.house;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.library.dependencies.SlicesRuleDefinition;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Imports point one way: down the list of rooms in DEVELOPERS.md. */
class RoomsTest {
    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.keeplit");

    /** From the bottom up. */
    private static final List<String> ROOMS = List.of(
            "text", "unit", "reference", "network", "condition", "rule", "procedure", "outcome", "program", "electric", "explore",
            "insight", "mend", "verdict", "page", "recheck", "proof", "gridfile", "exchange", "card", "report", "drill", "log", "paper", "editor",
            "command");

    private static String inside(String room) {
        return "org.keeplit." + room + "..";
    }

    @TestFactory
    Stream<DynamicTest> noRoomImportsOneAbove() {
        return ROOMS.stream().map(room -> DynamicTest.dynamicTest(room, () -> {
            String[] above = ROOMS.subList(ROOMS.indexOf(room) + 1, ROOMS.size()).stream()
                    .map(RoomsTest::inside)
                    .toArray(String[]::new);
            if (above.length > 0) {
                noClasses().that().resideInAPackage(inside(room)).should().dependOnClassesThat().resideInAnyPackage(above)
                        .check(CLASSES);
            }
        }));
    }

    @Test
    void languageSeesOnlyTypedTrees() {
        noClasses()
                .that()
                .resideInAPackage(inside("language"))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        inside("outcome"), inside("program"), inside("electric"), inside("explore"), inside("insight"), inside("plain"), inside("mend"),
                        inside("verdict"), inside("gridfile"), inside("exchange"), inside("page"), inside("recheck"), inside("proof"), inside("card"), inside("report"), inside("drill"), inside("log"), inside("paper"), inside("editor"),
                        inside("command"))
                .check(CLASSES);
    }

    @Test
    void thePlainEvaluatorSeesOnlyModelRooms() {
        noClasses()
                .that()
                .resideInAPackage(inside("plain"))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        inside("outcome"), inside("program"), inside("electric"), inside("explore"), inside("insight"), inside("language"), inside("mend"),
                        inside("verdict"), inside("gridfile"), inside("exchange"), inside("page"), inside("recheck"), inside("proof"), inside("card"), inside("report"), inside("drill"), inside("log"), inside("paper"), inside("editor"), inside("command"))
                .allowEmptyShould(true)
                .check(CLASSES);
    }

    /** Nor does what re-checks a proof with it: a mistake in the binding of the search would be confirmed. */
    @Test
    void thePlainEvaluatorBindsProceduresByItself() {
        String procedure = "org\\.keeplit\\.procedure\\.";
        noClasses()
                .that()
                .resideInAnyPackage(inside("plain"), inside("recheck"))
                .should()
                .dependOnClassesThat()
                .haveNameMatching(procedure + "(Binding|Substitution|Editing|Placing|CallContract|Actions)(\\$.*)?")
                .check(CLASSES);
    }

    @Test
    void onlyTheRecheckImportsThePlainEvaluator() {
        noClasses()
                .that()
                .resideOutsideOfPackages(inside("plain"), inside("recheck"))
                .should()
                .dependOnClassesThat()
                .resideInAPackage(inside("plain"))
                .check(CLASSES);
    }

    /** What re-checks a proof shares nothing with what wrote it, however far around. */
    @Test
    void theRecheckSeesNothingOfTheSearch() {
        noClasses()
                .that()
                .resideInAPackage(inside("recheck"))
                .should()
                .transitivelyDependOnClassesThat()
                .resideInAnyPackage(
                        inside("outcome"), inside("program"), inside("electric"), inside("explore"), inside("insight"), inside("mend"), inside("verdict"),
                        inside("proof"), inside("language"))
                .check(CLASSES);
    }

    @Test
    void noRoomsInACircle() {
        SlicesRuleDefinition.slices()
                .matching("org.keeplit.(*)..")
                .should()
                .beFreeOfCycles()
                .check(CLASSES);
    }

    @Test
    void generatedParsersStayInTheLanguage() {
        noClasses()
                .that()
                .resideOutsideOfPackage(inside("language"))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.keeplit.language.grammar..", "org.antlr..")
                .check(CLASSES);
    }
}
