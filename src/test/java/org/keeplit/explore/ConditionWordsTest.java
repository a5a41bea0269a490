package org.keeplit.explore;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.keeplit.condition.Condition;
import org.keeplit.condition.PhaseTerm;
import org.keeplit.page.SmallJob;
import org.keeplit.procedure.Block;

/** Conditions are told as they are written: what a card or a story says is what the procedure says. */
class ConditionWordsTest {
    /** {@return what the step of a small job requires, in words} */
    private static List<String> told(String requires) {
        Block.Stage stage = (Block.Stage) SmallJob.of("  op closes bridge\n    requires " + requires + "\n")
                .givenProcedures().get(0).body().get(0);
        List<Condition> all = ((Block.Step) stage.parts().get(0)).requires();
        return all.stream().map(Stepper::words).toList();
    }

    @Test
    void phasesAreToldAsTheyAreWritten() {
        for (String written : List.of(
                "main is closed",
                "main is closed on all phases",
                "main is closed on phase B",
                "main is closed on phase BC",
                "main is not closed on all phases",
                "the current through main on phase A is at most 10 A",
                "every switching device D is closed on all phases")) {
            assertEquals(List.of(written), told(written));
        }
    }

    @Test
    void whatIsMeantIsTheSameWhetherAllPhasesAreSaidOrNot() {
        assertEquals(new PhaseTerm.All(true), PhaseTerm.ALL);
    }
}
