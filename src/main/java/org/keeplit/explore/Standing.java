package org.keeplit.explore;

import com.google.common.collect.ImmutableList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import org.keeplit.electric.Analysis;
import org.keeplit.electric.Grid;
import org.keeplit.electric.Level;
import org.keeplit.program.FieldKey;
import org.keeplit.program.Program;
import org.keeplit.program.Vertex;

/** How everything stands in one state of a run, for whoever draws or tells it. It does not change. */
public final class Standing {
    private final Program program;
    private final Grid grid;
    private final long[] state;
    private final Level[] levels;
    private final BitSet tied = new BitSet();

    Standing(World world, Scene scene) {
        this.program = world.program();
        this.grid = world.grid();
        this.state = scene.state().clone();
        List<Vertex> vertices = grid.vertices();
        Analysis analysis = scene.analysis();
        this.levels = new Level[vertices.size()];
        for (int i = 0; i < levels.length; i++) {
            levels[i] = analysis.level(i);
            tied.set(i, analysis.tiedToGround(i));
        }
    }

    /** {@return the program of the run} */
    public Program program() {
        return program;
    }

    /**
     * {@return how alive a place is; nothing if the run has no such place}
     *
     * @param vertex the place
     */
    public Optional<Level> level(Vertex vertex) {
        return grid.number(vertex).map(i -> levels[i]);
    }

    /**
     * {@return whether anything that conducts joins a place to an applied ground}
     *
     * @param vertex the place
     */
    public boolean isTiedToGround(Vertex vertex) {
        return grid.number(vertex).map(tied::get).orElse(false);
    }

    /**
     * {@return how one thing stands, in words: its contacts, leads, settings, holders}
     *
     * @param name its name
     */
    public ImmutableList<String> words(String name) {
        StateWords words = new StateWords(program);
        return program.layout().fields().stream()
                .filter(field -> isAbout(field.key(), name))
                .map(field -> words.words(field.key(), field.get(state)))
                .filter(text -> !text.isEmpty())
                .collect(ImmutableList.toImmutableList());
    }

    private static boolean isAbout(FieldKey key, String name) {
        if (key instanceof FieldKey.Pole pole) {
            return pole.device().equals(name);
        } else if (key instanceof FieldKey.End end) {
            return end.device().equals(name);
        } else if (key instanceof FieldKey.Clamp clamp) {
            return clamp.family().equals(name);
        } else if (key instanceof FieldKey.Mode mode) {
            return mode.device().equals(name);
        } else if (key instanceof FieldKey.Tap tap) {
            return tap.regulator().equals(name);
        } else if (key instanceof FieldKey.Placed placed) {
            return placed.device().equals(name);
        } else if (key instanceof FieldKey.Where where) {
            return where.person().equals(name);
        } else if (key instanceof FieldKey.Permitted permitted) {
            return permitted.permit().equals(name);
        }
        return key instanceof FieldKey.Tagged tagged && tagged.device().equals(name);
    }

    /**
     * {@return the value of a field, see {@link FieldKey}}
     *
     * @param key which
     */
    public int value(FieldKey key) {
        return program.layout().value(state, key);
    }
}
