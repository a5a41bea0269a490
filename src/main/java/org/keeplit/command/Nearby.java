package org.keeplit.command;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** What a command reads besides the files that it is given. */
final class Nearby {
    private Nearby() {}

    /** {@return the folder {@code shared} of the nearest folder that has one: the place itself or one above it} */
    static Optional<Path> shared(Path place) {
        Path here = Path.of("").toAbsolutePath();
        for (Path at = place.toAbsolutePath().normalize(); at != null; at = at.getParent()) {
            Path shared = at.resolve("shared");
            if (Files.isDirectory(shared)) {
                return Optional.of(shared.startsWith(here) && !place.isAbsolute() ? here.relativize(shared) : shared);
            }
        }
        return Optional.empty();
    }

    /** {@return what is read when no file is given: the library, or else everything here} */
    static List<Path> usual(List<Path> files) {
        if (files != null && !files.isEmpty()) {
            return files;
        }
        Path shared = Path.of("shared");
        return List.of(Files.isDirectory(shared) ? shared : Path.of("."));
    }
}
