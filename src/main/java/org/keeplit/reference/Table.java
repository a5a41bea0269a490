package org.keeplit.reference;

import com.google.common.base.Splitter;
import com.google.common.collect.ImmutableList;
import com.google.common.io.Resources;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The rows of a file of comma-separated values beside this class; lines that begin with # say where they come from. */
final class Table {
    private Table() {}

    static ImmutableList<List<String>> rows(String file) {
        try {
            return Resources.readLines(Resources.getResource(Table.class, file), StandardCharsets.UTF_8).stream()
                    .filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .map(line -> Splitter.on(',').trimResults().splitToList(line))
                    .collect(ImmutableList.toImmutableList());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
