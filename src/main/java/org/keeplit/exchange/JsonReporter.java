package org.keeplit.exchange;

import com.google.gson.JsonObject;
import java.util.List;
import org.keeplit.procedure.Unjudged;
import org.keeplit.text.Problem;
import org.keeplit.text.Versions;
import org.keeplit.verdict.TextReport;

/** JSON by the schemas of this room, see {@link Schemas}. Members come in a fixed order; what is not there is left out. */
public final class JsonReporter implements Reporter {
    /** Makes a reporter. */
    public JsonReporter() {}

    @Override
    public String tell(Answer answer, List<Unjudged> unjudged, List<Problem> problems) {
        Tree tree = new Tree()
                .put("schema", Schemas.id(answer.command()))
                .put("tool", tool())
                .put("caution", TextReport.CAUTION.replace('\n', ' '))
                .list("problems", problems, Shared::problem)
                .someList("unjudged", unjudged, Shared::unjudged);
        if (answer instanceof Answer.Checks a) {
            VerdictJson.checks(a, tree);
        } else if (answer instanceof Answer.Tests a) {
            VerdictJson.tests(a, tree);
        } else if (answer instanceof Answer.Whys a) {
            VerdictJson.whys(a, tree);
        } else if (answer instanceof Answer.Orders a) {
            tree.list("orders", a.all(), InsightJson::order);
        } else if (answer instanceof Answer.Slips a) {
            tree.list("procedures", a.all(), InsightJson::slips);
        } else if (answer instanceof Answer.Retreats a) {
            tree.list("procedures", a.all(), InsightJson::retreat);
        } else if (answer instanceof Answer.Plans a) {
            tree.list("plans", a.all(), InsightJson::plan);
        } else if (answer instanceof Answer.Sweeps a) {
            InsightJson.sweep(a, tree);
        } else if (answer instanceof Answer.Mends a) {
            tree.list("mends", a.all(), InsightJson::mend);
        } else if (answer instanceof Answer.Imports a) {
            tree.list("imports", a.all(), GridJson::imported);
        } else if (answer instanceof Answer.Rechecks a) {
            tree.list("proofs", a.all(), RecheckWords::json);
        }
        return Tree.text(tree.done());
    }

    private static JsonObject tool() {
        return new Tree()
                .put("name", "keeplit")
                .put("version", Versions.PROGRAM)
                .put("language", Versions.LANGUAGE)
                .done();
    }
}
