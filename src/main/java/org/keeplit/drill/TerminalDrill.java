package org.keeplit.drill;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A drill at a terminal: it asks, reads a number, and tells what comes of it. */
public final class TerminalDrill {
    private final Drill drill;
    private final BufferedReader in;
    private final PrintWriter out;
    private final List<Drill.Option> picked = new ArrayList<>();
    private int looks;
    private boolean hints;

    /** Begins. @param drill the drill @param in what the trainee types @param out what the trainee reads @param hints whether hints are shown from the start */
    public TerminalDrill(Drill drill, BufferedReader in, PrintWriter out, boolean hints) {
        this.drill = drill;
        this.in = in;
        this.out = out;
        this.hints = hints;
    }

    /**
     * Runs until the end of the procedure, or until the trainee leaves.
     *
     * @throws IOException if nothing can be read
     */
    public void run() throws IOException {
        out.println("Drill: " + drill.instance().words());
        out.println("A number picks, h shows hints or hides them, q leaves.");
        int at = next(drill.start());
        while (at >= 0 && !drill.places().get(at).options().isEmpty()) {
            at = place(at);
        }
        end();
        out.flush();
    }

    /** {@return where it goes on; -1 to leave} */
    private int place(int at) throws IOException {
        Drill.Place place = drill.places().get(at);
        out.println();
        out.println(place.done() + (place.done() == 1 ? " step is done. " : " steps are done. ") + String.join("; ", place.people()) + ".");
        if (hints) {
            place.hint().forEach(hint -> out.println("  hint: " + hint));
        }
        out.println("What comes next?");
        for (int i = 0; i < place.options().size(); i++) {
            out.println("  " + (i + 1) + "  " + place.options().get(i).words());
        }
        out.print("> ");
        out.flush();
        String line = in.readLine();
        if (line == null || line.strip().toLowerCase(Locale.ROOT).equals("q")) {
            out.println();
            return -1;
        } else if (line.strip().toLowerCase(Locale.ROOT).equals("h")) {
            hints = !hints;
            return at;
        }
        int number = number(line.strip(), place.options().size());
        if (number < 0) {
            out.println("Type a number from 1 to " + place.options().size() + ", h or q.");
            return at;
        }
        return pick(place.options().get(number), at);
    }

    private static int number(String text, int most) {
        if (!text.matches("[0-9]{1,3}")) {
            return -1;
        }
        int number = Integer.parseInt(text);
        return number >= 1 && number <= most ? number - 1 : -1;
    }

    private int pick(Drill.Option option, int at) {
        picked.add(option);
        out.println(option.isRight() ? "Right." : "Not right (" + option.ending().words() + ").");
        DrillWords.told(option).forEach(text -> out.println("  " + text));
        option.now().forEach(change -> out.println("  - " + change));
        if (!option.isRight()) {
            out.println("It is taken back.");
            return at;
        }
        // What a look finds is not for the trainee to choose: each time another answer.
        Drill.Next next = option.next().get(option.next().size() > 1 ? looks++ % option.next().size() : 0);
        next.found().ifPresent(found -> out.println("  found: " + found));
        return next(next);
    }

    private int next(Drill.Next next) {
        next.then().forEach(step -> out.println("  then, as written: " + step));
        return next.place();
    }

    private void end() {
        out.println("What you picked:");
        Map<Drill.Ending, Integer> counts = new EnumMap<>(Drill.Ending.class);
        picked.forEach(o -> counts.merge(o.ending(), 1, Integer::sum));
        counts.forEach((ending, count) -> out.println("  " + count + " times: " + ending.words()));
        picked.stream().filter(o -> !o.isRight()).forEach(o -> out.println("  - " + o.words() + ": " + String.join(" ", DrillWords.told(o))));
    }
}
