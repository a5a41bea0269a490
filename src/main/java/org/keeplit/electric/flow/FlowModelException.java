package org.keeplit.electric.flow;

import com.google.common.collect.ImmutableList;
import java.util.List;

/** The network cannot be computed as described. Each problem is a sentence that names the element. */
public final class FlowModelException extends IllegalArgumentException {
    private final ImmutableList<String> problems;

    FlowModelException(List<String> problems) {
        super(String.join("\n", problems));
        this.problems = ImmutableList.copyOf(problems);
    }

    /**
     * What is wrong, in the order of building.
     *
     * @return one sentence for each problem
     */
    public ImmutableList<String> problems() {
        return problems;
    }
}
