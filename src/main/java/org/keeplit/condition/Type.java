package org.keeplit.condition;

/** The sorts of object that terms name and quantifiers range over. */
public enum Type {
    /** A switching device of the network. */
    DEVICE("a switching device"),
    /** A regulator bank. */
    REGULATOR("a regulator"),
    /** A capacitor bank. */
    CAPACITOR("a capacitor bank"),
    /** A transformer bank. */
    TRANSFORMER("a transformer"),
    /** A line section. */
    LINE("a line section"),
    /** A load. */
    LOAD("a load"),
    /** A customer's generator. */
    GENERATOR("a generator"),
    /** A utility source. */
    SOURCE("a source"),
    /** A place that has conductors: a node, a bushing, a lead, a jumper. */
    POINT("a point on the line"),
    /** A structure where equipment stands and people work. */
    SITE("a site"),
    /** A member of the crew. */
    PERSON("a person"),
    /** A temporary conductor that the procedure brings. */
    JUMPER("a jumper"),
    /** A protective ground that the procedure brings. */
    GROUND("a protective ground"),
    /** A generating set that the procedure brings. */
    MOBILE("a temporary source"),
    /** A hold-off that the procedure uses. */
    HOLD("a hold"),
    /** A clearance that the procedure uses. */
    CLEARANCE("a clearance"),
    /** Anything that makes or breaks: a pole, a lead end, a clamp. */
    CONTACT("a contact"),
    /** One phase. */
    PHASE("a phase");

    private final String phrase;

    Type(String phrase) {
        this.phrase = phrase;
    }

    /** {@return the words with which messages name one of them} */
    public String phrase() {
        return phrase;
    }
}
