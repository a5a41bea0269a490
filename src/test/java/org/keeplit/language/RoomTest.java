package org.keeplit.language;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

/** What this room may know of the others, and what it shows of itself. */
class RoomTest {
    private static final JavaClasses HOUSE = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.keeplit");

    @Test
    void itKnowsTheModelOnly() {
        noClasses()
                .that()
                .resideInAPackage("org.keeplit.language..")
                .should()
                .dependOnClassesThat(
                        com.tngtech.archunit.base.DescribedPredicate.describe(
                                "stand in rooms above or beside it",
                                c -> c.getPackageName().startsWith("org.keeplit.")
                                        && !c.getPackageName()
                                                .matches(
                                                        "org\\.keeplit\\.(language(\\.grammar)?|text|unit|network|condition|rule|procedure)")))
                .check(HOUSE);
    }

    @Test
    void theParserIsItsOwnAffair() {
        noClasses()
                .that()
                .resideOutsideOfPackage("org.keeplit.language..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.keeplit.language.grammar..", "org.antlr..")
                .check(HOUSE);
    }

    @Test
    void onlyTheEntryIsPublic() {
        classes()
                .that()
                .resideInAPackage("org.keeplit.language")
                .and()
                .arePublic()
                .and()
                .areTopLevelClasses()
                .should()
                .haveNameMatching(".*\\.(Reader|Library|Explanations|FreeNames|Formatter|Rereading|Sketch)")
                .check(HOUSE);
    }
}
