package org.keeplit.page;

import com.google.common.collect.ImmutableSortedSet;
import com.google.common.hash.Hashing;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.TreeSet;
import org.keeplit.procedure.Block;
import org.keeplit.procedure.Instance;
import org.keeplit.procedure.Procedure;
import org.keeplit.text.Source;

/** A short hash of everything that a proof reads, whatever the files are called and wherever they lie. */
public final class InputHash {
    private static final int SHOWN = 12;

    private InputHash() {}

    /** {@return the first twelve hexadecimal digits of a SHA-256 over the files and the place} */
    public static String of(Instance instance) {
        TreeSet<String> texts = new TreeSet<>();
        sources(instance).forEach(source -> texts.add(source.content()));
        var hasher = Hashing.sha256().newHasher();
        hasher.putString(instance.words(), StandardCharsets.UTF_8);
        for (String text : texts) {
            hasher.putInt(text.length()).putString(text, StandardCharsets.UTF_8);
        }
        return hasher.hash().toString().substring(0, SHOWN);
    }

    /**
     * {@return the files that the hash is over, each as the first twelve digits of its own hash and its name without folders, in order}
     *
     * @param instance the procedure on its place
     */
    public static ImmutableSortedSet<String> files(Instance instance) {
        return sources(instance).stream()
                .map(s -> Hashing.sha256().hashString(s.content(), StandardCharsets.UTF_8).toString().substring(0, SHOWN)
                        + " " + s.name().substring(Math.max(s.name().lastIndexOf('/'), s.name().lastIndexOf('\\')) + 1))
                .collect(ImmutableSortedSet.toImmutableSortedSet(Comparator.naturalOrder()));
    }

    private static Set<Source> sources(Instance instance) {
        Set<Source> texts = new LinkedHashSet<>();
        Procedure procedure = instance.procedure();
        add(procedure.span().source(), texts);
        blocks(procedure.body(), texts);
        add(instance.network().span().source(), texts);
        instance.network().elements().forEach(e -> add(e.kind().span().source(), texts));
        procedure.temporaries().forEach(
                t -> instance.network().kind(t.kind().name()).ifPresent(kind -> add(kind.span().source(), texts)));
        procedure.keeps().forEach(book -> {
            add(book.span().source(), texts);
            book.rules().forEach(rule -> add(rule.span().source(), texts));
            book.definitions().forEach(definition -> add(definition.span().source(), texts));
        });
        return texts;
    }

    private static void add(Source source, Set<Source> texts) {
        texts.add(source);
    }

    /** Steps of a variant and of a called procedure stand in other files. */
    private static void blocks(Collection<Block> blocks, Set<Source> texts) {
        for (Block block : blocks) {
            add(block.span().source(), texts);
            if (block instanceof Block.Group group) {
                blocks(group.parts(), texts);
            } else if (block instanceof Block.Stage stage) {
                blocks(stage.parts(), texts);
            } else if (block instanceof Block.ForEachPhase each) {
                blocks(each.parts(), texts);
            } else if (block instanceof Block.Repeat repeat) {
                blocks(repeat.parts(), texts);
            } else if (block instanceof Block.IfFound choice) {
                blocks(choice.then(), texts);
                blocks(choice.otherwise(), texts);
            } else if (block instanceof Block.Call call) {
                add(call.procedure().span().source(), texts);
                blocks(call.procedure().body(), texts);
            }
        }
    }
}
