package org.keeplit.exchange;

import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.keeplit.outcome.Finding;
import org.keeplit.outcome.TraceStep;
import org.keeplit.procedure.Block;
import org.keeplit.text.Span;

/** Names of files as other programs get them, and where findings stand in them. */
public final class Where {
    private static final Path HERE = Path.of("").toAbsolutePath();

    private Where() {}

    /** {@return the name of a file, relative to the working folder, with slashes} @param name its name as it was read */
    public static String file(String name) {
        Path path;
        try {
            path = Path.of(name);
        } catch (InvalidPathException e) {
            // The locale does not have its characters, so no path can be made of what is shown of it.
            return name.replace('\\', '/');
        }
        if (path.isAbsolute() && HERE.getRoot().equals(path.getRoot())) {
            path = HERE.relativize(path);
        }
        return path.toString().replace('\\', '/');
    }

    /** {@return the same as a reference by the rules of RFC 3986} @param name the file's name as it was read */
    public static String uri(String name) {
        try {
            return new URI(null, null, file(name), null).toASCIIString();
        } catch (URISyntaxException e) {
            throw new IllegalArgumentException(name, e);
        }
    }

    /**
     * Finds the place of a finding.
     *
     * @param finding the finding
     * @param steps the steps of the procedure
     * @param head the procedure's head
     * @return its step's place; the head, for one at the start
     */
    public static Span of(Finding finding, List<Block.Step> steps, Span head) {
        int at = finding.stepNumber();
        return at >= 0 && at < steps.size() ? steps.get(at).span() : head;
    }

    /** {@return where an act of a way is written} @param act the act @param steps the steps of the procedure */
    public static Optional<Span> of(TraceStep act, List<Block.Step> steps) {
        return steps.stream()
                .filter(s -> s.span().line() == act.line() && s.label().orElse(s.sentence()).equals(act.step()))
                .map(Block.Step::span)
                .findFirst();
    }
}
