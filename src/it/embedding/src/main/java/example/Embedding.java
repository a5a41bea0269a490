package example;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import org.keeplit.Keeplit;
import org.keeplit.language.Library;
import org.keeplit.outcome.Limits;
import org.keeplit.text.Problems;
import org.keeplit.verdict.Judgement;

/** Proves the procedures of some files, each for at most a minute, and stops when it is interrupted. */
public final class Embedding {
    public static void main(String[] files) {
        Library library = Keeplit.read(Arrays.stream(files).map(Path::of).toList());
        library.problems().forEach(p -> System.out.println(p.span() + ": " + p.message()));
        Limits limits = new Limits(1_000_000, Duration.ofMinutes(1), 512L << 20);
        for (Judgement one : Keeplit.check(library, limits, (states, open) -> !Thread.interrupted(), new Problems())) {
            System.out.println(one.status() + "  " + one.instance().words() + ", in " + one.outcome().states() + " states");
            one.stories().forEach(f -> System.out.println("  " + f.sentence() + ", after " + f.trace().size() + " acts"));
        }
    }
}
