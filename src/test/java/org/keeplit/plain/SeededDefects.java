package org.keeplit.plain;

import java.util.List;

/** Mistakes of meaning, each a small change to the source of one of the evaluators. */
final class SeededDefects {
    private SeededDefects() {}

    /**
     * A mistake.
     *
     * @param name what is wrong then
     * @param file the file below {@code org/keeplit}
     * @param right what stands there, once
     * @param wrong what stands there by mistake
     */
    record Defect(String name, String file, String right, String wrong) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static Defect of(String name, String file, String right, String wrong) {
        return new Defect(name, file + ".java", right, wrong);
    }

    static final List<Defect> ALL = List.of(
            of("requirements are judged at the last act of a step", "explore/Trying",
                    "if (machine.orders().isFirst(move, scene.state())",
                    "if (machine.orders().isLast(move, scene.state())"),
            of("rules before an act are judged after it", "explore/Trying",
                    "Judging.At now = judging.rules(machine.before(act), at);",
                    "long[] was = scene.state();\n        machine.apply(move, scene);\n"
                            + "        Judging.At now = judging.rules(machine.before(act), at);\n        scene.at(was);"),
            of("who looks and cannot know stops", "explore/Trying",
                    "machine.seen(act, scene) == Truth.FALSE", "machine.seen(act, scene) != Truth.TRUE"),
            of("a flash ends nothing", "explore/Explorer", "if (!isVoid(seed.state))", "if (seed.state != null)"),
            of("who waits is stuck though others go on", "explore/Expanding", "if (waits >= 0 && !goes)", "if (waits >= 0)"),
            of("expectations are judged at the first act", "explore/Trying", "boolean last = machine.orders().isLast(move, scene.state());",
                    "boolean last = machine.orders().isFirst(move, scene.state());"),
            of("any order is taken as together", "program/Automaton",
                    "if (isBegun(part, done) && !isDone(part, done)) {", "if (part == null) {"),
            of("every act begins its step", "program/Automaton", "!isBegun(step, done),", "step != null,"),
            of("a unit may trip again and again", "explore/Reactions",
                    "!since.had(reaction) && !moved", "!moved"),
            of("a trip that must come may stay away", "explore/Reactions", "atRest &= !trip.must();", "atRest &= true;"),
            of("a residual is shared like a phase", "explore/TripCurrents",
                    "return SharedCurrent.bounds(known, parts);",
                    "parts.add(known);\n            return SharedCurrent.bounds(Complex.ZERO, parts);"),
            of("a bypassed unit carries what the load flow gives it", "explore/TripCurrents",
                    "if (!ways.isEmpty()) {", "if (ways == null) {"),
            of("a rule is not asked again when a field of its changed", "explore/Nodes",
                    "            into.field(field);\n        }\n\n        @Override\n        public Truth eval(Scene scene) {\n            return Truth.of(field.get(scene.state()) == value);",
                    "        }\n\n        @Override\n        public Truth eval(Scene scene) {\n            return Truth.of(field.get(scene.state()) == value);"),
            of("a branch is taken when the other was found", "explore/Machine",
                    "== guard.outcome() + 1) != guard.wanted()", "== guard.outcome() + 1) == guard.wanted()"),
            of("together is taken as in order", "plain/Process", "case TOGETHER -> true;", "case TOGETHER -> i == 0;"),
            of("while a scope is unknown nothing is required", "explore/RuleInstance",
                    "if (outside == Truth.TRUE)", "if (outside != Truth.FALSE)"),
            of("an excuse excuses nothing", "explore/RuleInstance", ".or(excuse.eval(scene))", ""),
            of("a test for dead never grows stale", "explore/Settling",
                    "boolean doubtful = disturbance != null", "boolean doubtful = tests.isEmpty()"),
            of("a regulator in automatic stays on neutral", "explore/Settling",
                    "if (tap.automatic.eval(scene) != Truth.FALSE)", "if (tap.automatic.eval(scene) == null)"),
            of("found closed stays found closed when it opens", "explore/ActCompiler",
                    "Action.Proof.CLOSED,", ""),
            of("a unit is lowered with its leads on", "explore/ActCompiler",
                    "if (element.kind().has(Trait.LEADS)) {", "if (element == null) {"),
            of("a hold is read back before it is issued", "explore/ActCompiler",
                    "case REPEAT -> atoms.is(key, FieldKey.Permitted.ISSUED);",
                    "case REPEAT -> atoms.is(key, FieldKey.Permitted.ASKED);"),
            of("a missing setting counts as on", "explore/AtomCompiler",
                    "constant(value.equals(Mode.BLOCKED))", "constant(!value.equals(Mode.BLOCKED))"),
            of("phases are in phase when they cross", "explore/ProofNodes",
                    "1 << ClosingDuty.PARALLEL.ordinal()", "1 << ClosingDuty.CROSS.ordinal()"),
            of("a ground goes where a generator may run, untested", "explore/DutyFit",
                    "return dead.eval(scene) == Truth.TRUE ? Truth.TRUE : Truth.UNKNOWN;", "return Truth.TRUE;"),
            of("a floating wye feeds with a phase lost", "electric/StatusSolver", "case WYE -> true;", "case WYE -> false;"),
            of("a grounded place is backfed", "electric/StatusSolver", "level[at] < to && !tied[at]", "level[at] < to"),
            of("what is fed backwards counts as supply beyond a bank", "electric/StatusSolver",
                    "return level == ENERGIZED ? BACKFED : level;", "return level;"),
            of("no backfeed through floating capacitors", "electric/GridBuilder",
                    "bank.connection().couples())", "false)"),
            of("a delta's coils lie the other way round", "electric/GridBuilder",
                    "case 1 -> new int[] {0, 2};", "case 1 -> new int[] {0, 1};"),
            of("a ground through a switch protects people", "electric/Contact",
                    "return part != Part.POLE;", "return part != null;"),
            of("generators feed no structure", "electric/Feeding", "|| cells.generator[cell]", ""),
            of("open devices under remote control feed nothing", "electric/Feeding",
                    "|| mayClose.test(pole.owner())", ""),
            of("a device that trips is a solid bypass", "electric/SiteGraph",
                    "!contact.kind().has(Trait.TRIPS) && !contact.kind().has(Trait.FUSIBLE)", "true"),
            of("a regulator off neutral is a solid bypass", "electric/SiteGraph",
                    ": taps.neutral(joint.regulator.name(), joint.phase);", ": Truth.TRUE;"),
            of("two supplies are joined as if they were one", "electric/Duties",
                    "return same ? ClosingDuty.CROSS : ClosingDuty.JOIN;", "return ClosingDuty.CROSS;"),
            of("the ground is not looked at before closing", "electric/Duties",
                    "if (live && (now.tiedToGround(contact.a())", "if (!live && (now.tiedToGround(contact.a())"),
            of("a breaker isolates", "electric/Analysis", "!contact.kind().has(Trait.ISOLATES)", "contact == null"),
            of("motors that turn backwards are supplied", "electric/Analysis",
                    "? Truth.of(inSequence(cells)) : all", "? Truth.TRUE : all"),
            of("closed ties do not loop", "electric/Analysis", "return !own.isEmpty() && rest.joined(from, to);", "return false;"),
            of("a stretch has no end", "explore/Remembering", "case OPEN -> set ? 1 : clear ? 0 : was;", "case OPEN -> set ? 1 : was;"),
            of("a moment never grows stale", "explore/Remembering",
                    "case HAPPENED -> clear ? 0 : set ? 1 : was;", "case HAPPENED -> set ? 1 : was;"),
            of("what was so since a moment is what is so now", "explore/Remembering",
                    "case SINCE -> (set ? Truth.TRUE : Truth.values()[was]).and(bodies.get(i).eval(after)).ordinal();",
                    "case SINCE -> bodies.get(i).eval(after).ordinal();"),
            of("moments of breaking are judged after the act", "explore/Machine",
                    "int[] came = remembering.isIdle() ? null : remembering.moments(act.act().id(), scene);\n",
                    "for (Op op : act.ops()) {\n            op.apply(next);\n        }\n        int[] came ="
                            + " remembering.isIdle() ? null : remembering.moments(act.act().id(), new Scene(world).at(next));\n"),
            of("a duty is done by what came before it", "explore/Remembering",
                    "case PENDING -> (set ? 1 : clear ? 0 : was) == 1", "case PENDING -> (clear ? 0 : set ? 1 : was) == 1"),
            of("what may be so is counted as so", "explore/Node",
                    "sure += truth == Truth.TRUE ? 1 : 0;", "sure += truth != Truth.FALSE ? 1 : 0;"),
            of("a caution breaks", "explore/Judging",
                    "instance.rule().severity() == Rule.Severity.STOP", "instance.rule().severity() != null"),
            of("who acts is not looked at", "explore/Moments", "return moment.by().isEmpty()\n", "return moment != null\n"),
            of("who climbs leaves tests fresh", "plain/Effects", "|| deed instanceof Deed.Climb\n", "\n"));
}
