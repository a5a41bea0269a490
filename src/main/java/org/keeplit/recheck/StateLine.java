package org.keeplit.recheck;

import java.util.List;
import java.util.stream.Collectors;

/** A state as a line of a proof. */
public final class StateLine {
    private StateLine() {}

    /**
     * {@return the line: the acts that may still come up, as ranges, and the numbers of the facts that are not as at the start}
     *
     * @param left the numbers of the acts, from 0, in order
     * @param facts the numbers of the facts, from 1, in order
     */
    public static String of(List<Integer> left, List<Integer> facts) {
        return ranges(left) + " :" + facts.stream().map(n -> " " + n).collect(Collectors.joining());
    }

    private static String ranges(List<Integer> numbers) {
        if (numbers.isEmpty()) {
            return "nothing";
        }
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < numbers.size(); i++) {
            int from = numbers.get(i);
            while (i + 1 < numbers.size() && numbers.get(i + 1) == numbers.get(i) + 1) {
                i++;
            }
            int to = numbers.get(i);
            text.append(text.length() == 0 ? "" : ",").append(from).append(to == from ? "" : "-" + to);
        }
        return text.toString();
    }
}
