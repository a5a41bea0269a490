package org.keeplit.command;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.keeplit.gridfile.SwitchingPlan;
import org.keeplit.gridfile.SwitchingPlans;
import org.keeplit.language.Library;
import org.keeplit.outcome.Limits;
import org.keeplit.outcome.Watcher;
import org.keeplit.page.Proof;
import org.keeplit.page.WholeFolder;
import org.keeplit.procedure.Instance;
import org.keeplit.text.Problems;
import picocli.CommandLine;

/** {@code export}: switching plans for other programs. */
@CommandLine.Command(
        name = "export",
        description = "Write each procedure that holds as a switching plan (IEC CIM Operations package, RDF/XML), and where it is something else than the"
                + " standard's classes say.",
        mixinStandardHelpOptions = true)
final class ExportCommand extends PaperCommand<SwitchingPlans.Planned> {
    @Override
    String noun() {
        return "switching plans";
    }

    @Override
    List<SwitchingPlans.Planned> workOut(Library library, Limits limits, Watcher watcher, Problems problems) {
        return SwitchingPlans.of(library, limits, watcher, problems);
    }

    @Override
    Instance instance(SwitchingPlans.Planned one) {
        return one.instance();
    }

    @Override
    String told(SwitchingPlans.Planned one) {
        String words = one.instance().words() + ": ";
        return one.plan().isPresent()
                ? words + "a plan of " + count(one.plan().get(), "SwitchingStep") + " steps in " + count(one.plan().get(), "SwitchingStepGroup") + " groups"
                : words + "no plan, since it is not proved: " + String.join("; ", one.reasons());
    }

    private static int count(SwitchingPlan plan, String type) {
        return plan.xml().split("<cim:" + type + " ", -1).length - 1;
    }

    @Override
    Proof proof(SwitchingPlans.Planned one) {
        return one.proof();
    }

    @Override
    Map<String, byte[]> pages(SwitchingPlans.Planned one, LocalDate date, Consumer<String> told) {
        Map<String, byte[]> all = new LinkedHashMap<>();
        one.plan().ifPresent(plan -> {
            all.put("plan.xml", WholeFolder.bytes(plan.xml()));
            StringBuilder text = new StringBuilder();
            text.append(one.instance().words()).append(" as a switching plan, ").append(date).append("\n\nWhere it is something else than the standard's classes say:\n\n");
            plan.deviations().forEach(d -> text.append("- ").append(d).append('\n'));
            text.append("\nA verdict is about the model. Local rules, the safety manual and the person in charge come first.\n");
            all.put("deviations.txt", WholeFolder.bytes(text.toString()));
        });
        return all;
    }
}
