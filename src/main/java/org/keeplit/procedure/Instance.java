package org.keeplit.procedure;

import com.google.common.collect.ImmutableList;
import java.util.Map;
import java.util.stream.Collectors;
import org.keeplit.network.Network;

/**
 * A procedure on one network, from one start.
 *
 * @param procedure the procedure, with no choice of starts left
 * @param network the network
 * @param proof which objects its parameters stand for
 * @param start in which ways it starts, in words; empty if there is only one
 */
public record Instance(Procedure procedure, Network network, Procedure.Proof proof, String start) {

    /**
     * Every instance of a procedure.
     *
     * @param procedure the procedure
     * @param networks the networks by name; one with mistakes is not among them
     * @return its instances, in the order of the file; none on networks that are not there
     */
    public static ImmutableList<Instance> of(Procedure procedure, Map<String, Network> networks) {
        ImmutableList.Builder<Instance> all = ImmutableList.builder();
        for (Procedure.Proof proof : procedure.proofs()) {
            Network network = networks.get(proof.network());
            if (network != null) {
                procedure.everyStart().forEach(b -> all.add(new Instance(b.procedure(), network, proof, b.start())));
            }
        }
        return all.build();
    }

    /** {@return where it is, in words: the network, what stands for the parameters, the start} */
    public String place() {
        String arguments = proof.arguments().entrySet().stream()
                .map(e -> e.getValue() + " as " + e.getKey())
                .collect(Collectors.joining(" and "));
        return network.name()
                + (arguments.isEmpty() ? "" : " with " + arguments)
                + (start.isEmpty() ? "" : ", starting with " + start);
    }

    /** {@return the procedure and where it is, in words} */
    public String words() {
        return procedure.name() + " on " + place();
    }
}
