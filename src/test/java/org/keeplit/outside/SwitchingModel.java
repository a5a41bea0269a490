package org.keeplit.outside;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Crews that open and close switches at once, written out twice: as a network with a procedure, and as a model in Promela, in which each
 * act is one {@code d_step} and what is alive is worked out inline.
 *
 * @param nodes how many nodes; node 0 has the source
 * @param lines the ends of lines
 * @param switches the ends of switches
 * @param closed which switches are closed at the start
 * @param loads the nodes with a load
 * @param tracks for each crew what it does, one act after another
 */
record SwitchingModel(
        int nodes, List<int[]> lines, List<int[]> switches, boolean[] closed, List<Integer> loads, List<List<Act>> tracks) {

    /** One switch opens or closes. */
    record Act(int of, boolean closes) {}

    /** {@return a model; of every other nothing that anybody opens feeds a load} @param size how many switches @param crews how many crews @param acts how many acts each */
    static SwitchingModel make(long seed, int size, int crews, int acts) {
        Random random = new Random(seed);
        List<int[]> lines = new ArrayList<>();
        List<int[]> switches = new ArrayList<>();
        List<Integer> loads = new ArrayList<>();
        int nodes = 1;
        boolean[] closed = new boolean[size];
        for (int s = 0; s < size; s++) {
            // Every third switch closes a loop between what is there already.
            boolean loop = s % 3 == 2;
            int from = random.nextInt(nodes);
            int to = loop ? random.nextInt(nodes) : nodes++;
            switches.add(new int[] {from, to == from ? (to + 1) % nodes : to});
            closed[s] = random.nextInt(4) > 0;
            if (!loop) {
                lines.add(new int[] {to, nodes});
                if (random.nextBoolean()) {
                    loads.add(nodes);
                }
                nodes++;
            }
        }
        List<List<Act>> tracks = new ArrayList<>();
        for (int c = 0; c < crews; c++) {
            List<Act> track = new ArrayList<>();
            boolean[] now = closed.clone();
            for (int a = 0; a < acts; a++) {
                // A crew has switches of its own, now and then one of another's.
                int of = random.nextInt(10) == 0 ? random.nextInt(size) : (random.nextInt(size / crews) * crews + c) % size;
                now[of] = !now[of];
                track.add(new Act(of, now[of]));
            }
            tracks.add(track);
        }
        if (seed % 2 == 1) {
            closed[0] = true;
            loads = List.of(lines.get(0)[1]);
            tracks.replaceAll(track -> track.stream().filter(act -> act.of > 0).toList());
        }
        // A group without steps is no group.
        tracks.removeIf(List::isEmpty);
        return new SwitchingModel(nodes, lines, switches, closed, loads, tracks);
    }

    /** {@return the same with each crew at switches of its own, so that every combination of how far they have come is reached} */
    SwitchingModel apart() {
        List<List<Act>> own = new ArrayList<>();
        for (int c = 0; c < tracks.size(); c++) {
            int crew = c;
            own.add(tracks.get(c).stream().filter(act -> act.of % tracks.size() == crew).toList());
        }
        return new SwitchingModel(nodes, lines, switches, closed, loads, own);
    }

    String network() {
        StringBuilder text = new StringBuilder("language 1\nnetwork made \"Made\"\nuses overhead\n"
                + "system voltage 12.47 kV, frequency 60 Hz\nsource grid at n-0, phases ABC, supply grid, fault level 100 MVA\n");
        for (int k = 0; k < lines.size(); k++) {
            text.append("line l-%d from n-%d to n-%d, phases ABC, length 1 km, conductor acsr-336%n"
                    .formatted(k, lines.get(k)[0], lines.get(k)[1]));
        }
        for (int k = 0; k < switches.size(); k++) {
            text.append("switch s-%d from n-%d to n-%d, phases ABC%s%n"
                    .formatted(k, switches.get(k)[0], switches.get(k)[1], closed[k] ? "" : ", open"));
        }
        loads.forEach(n -> text.append("load u-%d at n-%d, phases ABC, 10 kW, 1 customer%n".formatted(n, n)));
        return text.toString();
    }

    static String rules() {
        return """
                language 1
                rulebook supply revision 1
                rule supplied
                  always every load L is supplied
                  says "{L} is dark"
                  because "They pay for it."
                """;
    }

    String procedure() {
        StringBuilder text = new StringBuilder("language 1\nprocedure P-1 revision 1\ntitle \"Made\"\nkeeps supply\ncrew\n");
        for (int c = 0; c < tracks.size(); c++) {
            text.append("  crew-%d \"Crew\"%s%n".formatted(c, c == 0 ? ", in charge" : ""));
        }
        text.append("proved on made\nstage \"All\"\n  together\n");
        for (int c = 0; c < tracks.size(); c++) {
            text.append("    in order\n");
            for (Act act : tracks.get(c)) {
                text.append("      crew-%d %s s-%d%n".formatted(c, act.closes ? "closes" : "opens", act.of));
            }
            text.append("    end\n");
        }
        return text.append("  end\n").toString();
    }

    /**
     * {@return the model for Spin}
     *
     * @param asserting whether a load without supply is an error, and an act that cannot be done where the verifier is asked for those too
     *     ({@link Spin#CANNOT}); else nothing is
     */
    String promela(boolean asserting) {
        StringBuilder text = new StringBuilder();
        if (asserting) {
            text.append("c_decl { int asked; }%n".formatted());
        }
        text.append("bit s[%d];%n".formatted(switches.size()));
        text.append("hidden byte v[%d];%nhidden byte more;%nhidden byte dark;%n".formatted(nodes));
        StringBuilder start = new StringBuilder(
                asserting ? "    c_code { asked = getenv(\"%s\") ? 1 : 0; };%n".formatted(Spin.CANNOT) : "");
        for (int k = 0; k < switches.size(); k++) {
            start.append(closed[k] ? "    s[%d] = 1;%n".formatted(k) : "");
        }
        for (int c = 0; c < tracks.size(); c++) {
            List<Act> track = tracks.get(c);
            text.append("byte pc%d;%nhidden byte of%d[%d];%nhidden byte to%d[%d];%n"
                    .formatted(c, c, track.size() + 1, c, track.size() + 1));
            for (int a = 0; a < track.size(); a++) {
                start.append("    of%d[%d] = %d; to%d[%d] = %d;%n"
                        .formatted(c, a, track.get(a).of, c, a, track.get(a).closes ? 1 : 0));
            }
        }
        text.append("inline look() {\n  dark = 0;\n");
        for (int n = 0; n < nodes; n++) {
            text.append("  v[%d] = %d;%n".formatted(n, n == 0 ? 1 : 0));
        }
        text.append("  more = 1;\n  do\n  :: more ->\n    more = 0;\n");
        for (int[] line : lines) {
            join(text, "1", line);
        }
        for (int k = 0; k < switches.size(); k++) {
            join(text, "s[" + k + "]", switches.get(k));
        }
        text.append("  :: else -> break\n  od;\n");
        loads.forEach(n -> text.append("  if :: !v[%d] -> dark = 1 :: else fi;%n".formatted(n)));
        text.append(asserting ? "  assert(!dark)\n}\n" : "  skip\n}\n");
        text.append("active proctype crews() {\n  d_step {\n%s    look()\n  };%nend:%n  do%n".formatted(start));
        for (int c = 0; c < tracks.size(); c++) {
            text.append("  :: d_step { (pc%1$d < %2$d && s[of%1$d[pc%1$d]] != to%1$d[pc%1$d]) -> s[of%1$d[pc%1$d]] = to%1$d[pc%1$d]; pc%1$d++; look() }%n"
                    .formatted(c, tracks.get(c).size()));
            if (asserting) {
                // Somebody else was there before: the switch stands already as this act would have it.
                text.append("  :: d_step { (pc%1$d < %2$d && s[of%1$d[pc%1$d]] == to%1$d[pc%1$d] && c_expr { asked }) -> assert(false) }%n"
                        .formatted(c, tracks.get(c).size()));
            }
        }
        return text.append("  od\n}\n").toString();
    }

    private static void join(StringBuilder text, String when, int[] ends) {
        text.append("    if :: %s && (v[%d] != v[%d]) -> v[%d] = 1; v[%d] = 1; more = 1 :: else fi;%n"
                .formatted(when, ends[0], ends[1], ends[0], ends[1]));
    }
}
