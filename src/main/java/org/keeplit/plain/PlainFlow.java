package org.keeplit.plain;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;
import org.keeplit.network.Conductor;
import org.keeplit.network.LoadModel;
import org.keeplit.network.Network;

/**
 * The load flow of one state: nodal equations in one matrix, solved again and again with every load as it is at the voltage
 * found last, until the voltages stay.
 */
final class PlainFlow {
    /** Below this part of its rated voltage a load keeps the impedance that it has there. */
    private static final double LOWEST = 0.7;
    /** From every place to ground, so that what hangs in the air has some voltage. */
    private static final double STRAY = 1e-9;
    /** More ohm to ground than this, and nothing but stray holds a place; no fault there draws anything. */
    private static final double FLOATING = 1e7;
    /** A place with less than this part of its nominal voltage is not alive. */
    private static final double ALIVE = 0.1;
    private static final double SETTLED = 1e-11;
    /** From this round on: the star point of loads of constant power, which nothing grounds, keeps drifting by a millionth. */
    private static final int LATE = 60;
    private static final double SETTLED_LATE = 1e-5;
    private static final int ROUNDS = 200;
    /** What has not settled after so many rounds of currents is solved with admittances. */
    private static final int QUICK = 40;
    /** From this round on each step goes half the way, against swinging to and fro. */
    private static final int SLOWER = 40;

    private final Network network;
    private final Map<String, Integer> numbers = new HashMap<>();
    private final List<PlainPieces.Piece> pieces;
    private final List<PlainPieces.Draw> draws;
    private final Set<String> alive = new HashSet<>();
    private final double factor;
    private final Function<String, PlainPieces.Piece> byName;
    /** What was found of faults; of one that cannot be, null. */
    private final Map<List<Object>, List<Cx>> faults = new HashMap<>();
    private PlainMatrix bare;
    private Cx[] fed;
    private Cx[] volts;

    PlainFlow(
            Network network,
            PlainPieces all,
            ToIntFunction<PlainPieces.Stepper> taps,
            List<Joint> joints,
            Predicate<Joint> closed,
            PlainPieces.Case asked) {
        this.network = network;
        this.factor = asked.factor();
        this.byName = name -> all.piece(name, taps);
        this.pieces = all.pieces(taps);
        List<PlainPieces.Draw> drawn = all.draws(asked.running());
        for (Joint joint : joints) {
            String a = PlainPieces.ground(joint.a());
            String b = PlainPieces.ground(joint.b());
            if (joint.isContact() && closed.test(joint) && (a != null || b != null)) {
                pieces.add(PlainPieces.between(a, b, Cx.ONE.over(PlainOhms.of(joint, network))));
            }
        }
        pieces.forEach(piece -> piece.ends().forEach(this::number));
        drawn.forEach(draw -> {
            number(draw.from());
            number(draw.to());
        });
        flood(drawn);
        this.draws = drawn.stream()
                .filter(d -> alive.contains(d.from()) || d.to() != null && alive.contains(d.to()))
                .toList();
        assemble();
        solve();
    }

    private void number(String place) {
        if (place != null) {
            numbers.putIfAbsent(place, numbers.size());
        }
    }

    /** Finds what sources reach: along conductors, through transformers, and through loads between two conductors. */
    private void flood(List<PlainPieces.Draw> all) {
        Map<String, List<String>> beside = new HashMap<>();
        List<List<String>> groups = new ArrayList<>();
        pieces.forEach(piece -> groups.addAll(piece.alive()));
        all.stream().filter(d -> d.to() != null).forEach(d -> groups.add(List.of(d.from(), d.to())));
        for (List<String> group : groups) {
            group.forEach(one -> beside.computeIfAbsent(one, k -> new ArrayList<>()).addAll(group));
        }
        pieces.stream().filter(p -> p.fed() != null).forEach(p -> alive.addAll(p.ends()));
        ArrayDeque<String> open = new ArrayDeque<>(alive);
        while (!open.isEmpty()) {
            for (String next : beside.getOrDefault(open.poll(), List.of())) {
                if (alive.add(next)) {
                    open.add(next);
                }
            }
        }
    }

    private void assemble() {
        bare = new PlainMatrix(numbers.size());
        fed = new Cx[numbers.size()];
        Arrays.fill(fed, Cx.ZERO);
        for (int i = 0; i < fed.length; i++) {
            bare.add(i, i, Cx.real(STRAY));
        }
        for (PlainPieces.Piece piece : pieces) {
            for (int i = 0; i < piece.ends().size(); i++) {
                Integer row = numbers.get(piece.ends().get(i));
                for (int j = 0; row != null && j < piece.ends().size(); j++) {
                    Integer column = numbers.get(piece.ends().get(j));
                    if (column != null) {
                        bare.add(row, column, piece.siemens().at(i, j));
                    }
                }
                if (row != null && piece.fed() != null) {
                    fed[row] = fed[row].plus(piece.fed()[i]);
                }
            }
        }
    }

    private void solve() {
        volts = quickly();
        if (volts == null) {
            volts = patiently();
        }
    }

    /** One elimination with every load at its rated voltage; how loads then differ is fed in as current. */
    private Cx[] quickly() {
        PlainMatrix matrix = bare.copy();
        draws.forEach(draw -> stamp(matrix, draw, siemens(draw, draw.volts())));
        PlainMatrix.Elimination done = new PlainMatrix.Elimination(matrix);
        Cx[] across = new Cx[draws.size()];
        Cx[] right = fed;
        for (int round = 0; round < QUICK; round++) {
            Cx[] found = done.answer(right);
            double moved = 0;
            right = fed.clone();
            for (int i = 0; i < across.length; i++) {
                PlainPieces.Draw draw = draws.get(i);
                Cx now = at(found, draw.from()).minus(at(found, draw.to()));
                Cx before = across[i] == null ? Cx.ZERO : across[i];
                moved = Math.max(moved, now.minus(before).size() / draw.volts());
                across[i] = now;
                Cx less = siemens(draw, draw.volts()).minus(siemens(draw, now.size())).times(now);
                feed(right, draw.from(), less);
                feed(right, draw.to(), less.times(-1));
            }
            if (moved <= SETTLED) {
                return found;
            }
        }
        return null;
    }

    private void feed(Cx[] right, String place, Cx amperes) {
        Integer row = place == null ? null : numbers.get(place);
        if (row != null) {
            right[row] = right[row].plus(amperes);
        }
    }

    /** Every load as the admittance that it is at the voltage found last, with an elimination each round. */
    private Cx[] patiently() {
        Cx[] siemens = new Cx[draws.size()];
        Cx[] across = new Cx[draws.size()];
        for (int i = 0; i < siemens.length; i++) {
            siemens[i] = siemens(draws.get(i), draws.get(i).volts());
            across[i] = Cx.ZERO;
        }
        for (int round = 0; round < ROUNDS; round++) {
            PlainMatrix matrix = bare.copy();
            for (int i = 0; i < siemens.length; i++) {
                stamp(matrix, draws.get(i), siemens[i]);
            }
            Cx[] found = matrix.solve(fed);
            double moved = 0;
            for (int i = 0; i < siemens.length; i++) {
                PlainPieces.Draw draw = draws.get(i);
                Cx now = at(found, draw.from()).minus(at(found, draw.to()));
                // Math.max keeps what is not a number.
                moved = Math.max(moved, now.minus(across[i]).size() / draw.volts());
                across[i] = now;
                Cx next = siemens(draw, now.size());
                siemens[i] = round < SLOWER ? next : next.plus(siemens[i]).times(0.5);
            }
            if (moved <= (round < LATE ? SETTLED : SETTLED_LATE)) {
                return found;
            }
        }
        return null;
    }

    private void stamp(PlainMatrix matrix, PlainPieces.Draw draw, Cx siemens) {
        Integer from = numbers.get(draw.from());
        Integer to = numbers.get(draw.to());
        matrix.add(from, from, siemens);
        if (to != null) {
            matrix.add(to, to, siemens);
            matrix.add(from, to, siemens.times(-1));
            matrix.add(to, from, siemens.times(-1));
        }
    }

    private Cx siemens(PlainPieces.Draw draw, double volts) {
        double at = Math.max(volts, LOWEST * draw.volts());
        double square = draw.model() == LoadModel.POWER
                ? at * at
                : draw.model() == LoadModel.CURRENT ? at * draw.volts() : draw.volts() * draw.volts();
        return draw.power().conjugate().times((draw.made() ? 1 : factor) / square);
    }

    /** {@return whether the voltages settled} */
    boolean settled() {
        return volts != null;
    }

    private Cx at(Cx[] vector, String place) {
        Integer number = place == null ? null : numbers.get(place);
        return number == null ? Cx.ZERO : vector[number];
    }

    /** {@return the voltage of a place to ground; nothing where no source reaches} */
    Cx volts(String place) {
        return alive.contains(place) ? at(volts, PlainPieces.ground(place)) : Cx.ZERO;
    }

    /** {@return the current through a closed joint, from its one place to its other} */
    Cx through(Joint joint) {
        String a = PlainPieces.ground(joint.a());
        String b = PlainPieces.ground(joint.b());
        if (!alive.contains(a == null ? b : a)) {
            return Cx.ZERO;
        }
        return at(volts, a).minus(at(volts, b)).over(PlainOhms.of(joint, network));
    }

    /** {@return a line section by its name, or a regulator by its name and the phase, as it stands; null for anything else} */
    PlainPieces.Piece piece(String name) {
        return byName.apply(name);
    }

    /** {@return the current into one end of a piece} */
    Cx into(PlainPieces.Piece piece, String end) {
        int row = piece.ends().indexOf(end);
        if (row < 0 || !alive.contains(end)) {
            return Cx.ZERO;
        }
        Cx sum = Cx.ZERO;
        for (int j = 0; j < piece.ends().size(); j++) {
            sum = sum.plus(piece.siemens().at(row, j).times(at(volts, piece.ends().get(j))));
        }
        return sum;
    }

    /**
     * The current of a fault from one place to ground, or between two, with no load, and then those through some joints.
     *
     * @param place the faulted place
     * @param other what it touches; null for ground
     * @param ohms the resistance of the fault
     * @param through closed joints
     * @return the fault's first, then that through each joint from its one place to its other; null if a place is not held
     *     or has no voltage
     */
    List<Cx> faulted(String place, String other, double ohms, double nominal, List<Joint> through) {
        List<Object> asked = Arrays.asList(place, other, ohms, nominal, through);
        if (!faults.containsKey(asked)) {
            faults.put(asked, findFaulted(place, other, ohms, nominal, through));
        }
        return faults.get(asked);
    }

    private List<Cx> findFaulted(String place, String other, double ohms, double nominal, List<Joint> through) {
        Integer here = numbers.get(place);
        Integer there = other == null ? null : numbers.get(other);
        if (here == null || other != null && there == null) {
            return null;
        }
        Cx[][] found = bare.solve(new Cx[][] {fed, unit(here), there == null ? unit(here) : unit(there)});
        if (!held(found, 1, here, nominal) || there != null && !held(found, 2, there, nominal)) {
            return null;
        }
        Cx volts = found[0][here];
        Cx impedance = found[1][here].plus(Cx.real(ohms));
        if (there != null) {
            volts = volts.minus(found[0][there]);
            impedance = impedance.plus(found[2][there]).minus(found[1][there]).minus(found[2][here]);
        }
        Cx current = volts.over(impedance);
        Cx[] then = new Cx[fed.length];
        for (int i = 0; i < then.length; i++) {
            then[i] = found[0][i].minus(found[1][i].times(current));
            then[i] = there == null ? then[i] : then[i].plus(found[2][i].times(current));
        }
        List<Cx> all = new ArrayList<>(List.of(current));
        for (Joint joint : through) {
            Cx across = at(then, PlainPieces.ground(joint.a())).minus(at(then, PlainPieces.ground(joint.b())));
            all.add(across.over(PlainOhms.of(joint, network)));
        }
        return all;
    }

    private Cx[] unit(int at) {
        Cx[] one = new Cx[fed.length];
        Arrays.fill(one, Cx.ZERO);
        one[at] = Cx.ONE;
        return one;
    }

    private static boolean held(Cx[][] found, int column, int at, double nominal) {
        return found[column][at].size() <= FLOATING && found[0][at].size() > ALIVE * nominal;
    }

    /** {@return the largest current in one conductor when it touches ground, another or both others; loads left out} */
    double fault(String place) {
        if (!numbers.containsKey(place)) {
            return 0;
        }
        String head = place.substring(0, place.lastIndexOf('/') + 1);
        List<Integer> there = new ArrayList<>(List.of(numbers.get(place)));
        for (Conductor p : Conductor.values()) {
            if (p.isPhase() && !place.equals(head + p) && numbers.containsKey(head + p)) {
                there.add(numbers.get(head + p));
            }
        }
        Cx[][] rights = new Cx[there.size() + 1][];
        rights[0] = fed;
        for (int i = 0; i < there.size(); i++) {
            rights[i + 1] = new Cx[fed.length];
            Arrays.fill(rights[i + 1], Cx.ZERO);
            rights[i + 1][there.get(i)] = Cx.ONE;
        }
        Cx[][] found = bare.solve(rights);
        List<Integer> held = new ArrayList<>();
        for (int i = 0; i < there.size(); i++) {
            if (found[1 + i][there.get(i)].size() <= FLOATING) {
                held.add(i);
            }
        }
        if (!held.contains(0)) {
            return 0;
        }
        double most = tied(there, List.of(0), found, true);
        for (int i : held.subList(1, held.size())) {
            most = Math.max(most, tied(there, List.of(0, i), found, false));
        }
        return held.size() < 3 ? most : Math.max(most, tied(there, held, found, false));
    }

    /** {@return the current out of the first of some places tied together, to ground too or only to one another} */
    private static double tied(List<Integer> all, List<Integer> columns, Cx[][] found, boolean grounded) {
        List<Integer> there = columns.stream().map(all::get).toList();
        int n = there.size();
        PlainMatrix matrix = new PlainMatrix(n + 1);
        Cx[] right = new Cx[n + 1];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                matrix.add(i, j, found[1 + columns.get(j)][there.get(i)]);
            }
            right[i] = found[0][there.get(i)];
            // All end at one voltage; it is nothing, or what makes the currents cancel.
            matrix.add(i, n, Cx.ONE);
            matrix.add(n, i, grounded ? Cx.ZERO : Cx.ONE);
        }
        matrix.add(n, n, grounded ? Cx.ONE : Cx.ZERO);
        right[n] = Cx.ZERO;
        return matrix.solve(right)[0].size();
    }
}
