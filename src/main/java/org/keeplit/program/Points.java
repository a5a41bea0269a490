package org.keeplit.program;

import org.keeplit.condition.Term;
import org.keeplit.network.Conductor;
import org.keeplit.network.Element;
import org.keeplit.network.Trait;
import org.keeplit.procedure.Bound;
import org.keeplit.procedure.Temporary;

/** Turns bound terms into vertices and sites. */
public final class Points {
    private Points() {}

    /**
     * The vertex that a term names on one phase. What is said of the leads and bushings of a device without leads is said of its lines.
     *
     * @param bound the bound procedure
     * @param term a term for a point
     * @param phase the phase
     * @return the vertex
     */
    public static Vertex vertex(Bound bound, Term term, Conductor phase) {
        if (term instanceof Term.LineOf line) {
            Element.Branch branch = (Element.Branch) element(bound, line.of());
            return new Vertex.AtNode(branch.node(line.side()), phase);
        } else if (term instanceof Term.BushingOf bushing && hasLeads(bound, bushing.of())) {
            return new Vertex.Bushing(bushing.of().toString(), bushing.side(), phase);
        } else if (term instanceof Term.LeadOf lead && hasLeads(bound, lead.of())) {
            return new Vertex.Lead(lead.of().toString(), lead.side(), phase);
        } else if (term instanceof Term.BushingOf bushing) {
            return new Vertex.AtNode(((Element.Branch) element(bound, bushing.of())).node(bushing.side()), phase);
        } else if (term instanceof Term.LeadOf lead) {
            return new Vertex.AtNode(((Element.Branch) element(bound, lead.of())).node(lead.side()), phase);
        } else if (term instanceof Term.NodeOf node) {
            return new Vertex.AtNode(((Element.Shunt) element(bound, node.of())).node(), phase);
        } else if (bound.temporary(term.toString()).isPresent()) {
            return new Vertex.Temporary(term.toString(), phase);
        }
        return new Vertex.AtNode(term.toString(), phase);
    }

    /** {@return whether a device has leads that come off; one without is joined to its lines for good} @param device the device */
    public static boolean hasLeads(Bound bound, Term device) {
        return element(bound, device).kind().has(Trait.LEADS);
    }

    /**
     * The site of an object.
     *
     * @param bound the bound procedure
     * @param name a device, a regulator or temporary equipment; other elements stand at a site of their own name
     * @return the site's name
     */
    public static String siteOf(Bound bound, String name) {
        if (bound.temporary(name).isPresent()) {
            Temporary temporary = bound.temporary(name).get();
            return siteOf(bound, temporary.of().toString());
        }
        Element element = bound.network().element(name).orElse(null);
        if (element instanceof Element.Device device) {
            return device.site();
        } else if (element instanceof Element.Regulator regulator) {
            return regulator.site();
        }
        return name;
    }

    /** {@return the site that a term names} @param bound the bound procedure @param term a site, or what stands there */
    public static String site(Bound bound, Term term) {
        return siteOf(bound, term instanceof Term.SiteOf site ? site.of().toString() : term.toString());
    }

    private static Element element(Bound bound, Term term) {
        return bound.network()
                .element(term.toString())
                .orElseThrow(() -> new IllegalStateException("no element " + term));
    }
}
