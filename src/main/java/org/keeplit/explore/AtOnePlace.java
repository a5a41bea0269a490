package org.keeplit.explore;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.keeplit.outcome.Effort;
import org.keeplit.procedure.Instance;
import org.keeplit.text.Problem;
import org.keeplit.text.Problems;

/** Does one thing at one place, so that what goes wrong there takes nothing from what is found at the others. */
public final class AtOnePlace {
    /** The code of a fault of this program, told at the place at which it came up. */
    public static final String FAULT = "own-fault";

    /** The code of what a limit ended before it began. */
    public static final String TOO_LARGE = "too-large";

    private static final int FRAMES = 5;

    private AtOnePlace() {}

    /**
     * Does it.
     *
     * @param <T> what comes of it
     * @param one the place
     * @param problems is told of a fault, or of a limit
     * @param work what is done
     * @return what came of it; nothing after a fault or where a limit was reached
     */
    public static <T> Optional<T> guarded(Instance one, Problems problems, Supplier<Optional<T>> work) {
        try {
            return work.get();
        } catch (Effort.Spent spent) {
            problems.add(Problem.error(
                    "too-large", one.procedure().span(), one.words() + " was not worked out: " + spent.getMessage()));
        } catch (OutOfMemoryError full) {
            problems.add(Problem.error(
                            "too-large",
                            one.procedure().span(),
                            one.words() + " was not worked out: there was not enough memory to go on")
                    .help("give the program more, as in java -Xmx4g -jar keeplit.jar"));
        } catch (RuntimeException | StackOverflowError fault) {
            problems.add(Problem.error(
                            "own-fault",
                            one.procedure().span(),
                            one.words() + " was not worked out, by a fault of keeplit and not of your files")
                    .help("please report it with this: " + told(fault)));
        }
        return Optional.empty();
    }

    /** {@return whether a problem says nothing of the files} @param problem a problem */
    public static boolean isNotOfTheFiles(Problem problem) {
        return problem.code().equals(FAULT) || problem.code().equals(TOO_LARGE);
    }

    /** {@return what was thrown, and where, on one line} */
    private static String told(Throwable fault) {
        return fault + Arrays.stream(fault.getStackTrace())
                .limit(FRAMES)
                .map(frame -> ", at " + frame)
                .collect(Collectors.joining());
    }
}
