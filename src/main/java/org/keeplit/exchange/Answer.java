package org.keeplit.exchange;

import java.nio.file.Path;
import java.util.List;
import org.keeplit.gridfile.Imported;
import org.keeplit.outcome.Mend;
import org.keeplit.outcome.OrderTable;
import org.keeplit.outcome.PlanResult;
import org.keeplit.outcome.RetreatTable;
import org.keeplit.outcome.RuleAtStep;
import org.keeplit.outcome.SlipTable;
import org.keeplit.outcome.SweepResult;
import org.keeplit.recheck.ProofFile;
import org.keeplit.recheck.Rechecked;
import org.keeplit.verdict.Coverage;
import org.keeplit.verdict.ExampleJudgement;
import org.keeplit.verdict.Judgement;

/** What a command has to tell, whatever the format. */
public sealed interface Answer {
    /** {@return the command's name} */
    String command();

    /** {@return what came of each thing that was worked on} */
    List<?> all();

    /** {@return whether there was nothing to work on} */
    default boolean isEmpty() {
        return all().isEmpty();
    }

    /** Of {@code check}. @param all the verdicts @param strict whether a caution, and a rule whose case never came up, count against them */
    record Checks(List<Judgement> all, boolean strict) implements Answer {
        @Override
        public String command() {
            return "check";
        }
    }

    /** Of {@code test}. @param all what came of the examples @param coverage what they show of the rules */
    record Tests(List<ExampleJudgement> all, Coverage coverage) implements Answer {
        @Override
        public String command() {
            return "test";
        }

        @Override
        public boolean isEmpty() {
            return all.isEmpty() && coverage.rules().findAny().isEmpty();
        }
    }

    /** Of {@code order}. @param all the tables */
    record Orders(List<OrderTable> all) implements Answer {
        @Override
        public String command() {
            return "order";
        }
    }

    /** Of {@code slips}. @param all the tables */
    record Slips(List<SlipTable> all) implements Answer {
        @Override
        public String command() {
            return "slips";
        }
    }

    /** Of {@code retreat}. @param all the tables */
    record Retreats(List<RetreatTable> all) implements Answer {
        @Override
        public String command() {
            return "retreat";
        }
    }

    /** Of {@code plan}. @param all the plans */
    record Plans(List<PlanResult> all) implements Answer {
        @Override
        public String command() {
            return "plan";
        }
    }

    /** Of {@code sweep}. @param all what came of each place */
    record Sweeps(List<SweepResult> all) implements Answer {
        @Override
        public String command() {
            return "sweep";
        }
    }

    /** Of {@code mend}. @param all what was found for each procedure */
    record Mends(List<Mend> all) implements Answer {
        @Override
        public String command() {
            return "mend";
        }
    }

    /** Of {@code why}. @param all the explanations */
    record Whys(List<At> all) implements Answer {
        @Override
        public String command() {
            return "why";
        }
    }

    /** Of {@code import}. @param all what came of the files of each model */
    record Imports(List<Imported> all) implements Answer {
        @Override
        public String command() {
            return "import";
        }
    }

    /** Of {@code recheck}. @param all what came of each proof */
    record Rechecks(List<OfProof> all) implements Answer {
        @Override
        public String command() {
            return "recheck";
        }
    }

    /** A proof that was re-checked. @param path the file @param proof what it says @param came what came of it */
    record OfProof(Path path, ProofFile proof, Rechecked came) {}

    /** A rule around a step. @param place the procedure and where it was run, in words @param found the explanation */
    record At(String place, RuleAtStep found) {}
}
