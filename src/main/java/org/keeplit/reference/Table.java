package org.keeplit.reference;

import com.google.common.base.Splitter;
import com.google.common.collect.ImmutableList;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** The rows of a file of comma-separated values beside this class; lines that begin with # say where they come from. */
final class Table {
    private Table() {}

    static ImmutableList<List<String>> rows(String file) {
        // Opened here, and by no library: to other modules what lies in this one is closed.
        try (InputStream in = Objects.requireNonNull(Table.class.getResourceAsStream(file), file)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .map(line -> Splitter.on(',').trimResults().splitToList(line))
                    .collect(ImmutableList.toImmutableList());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
