package org.keeplit.gridfile;

/** Where a procedure is something else than the classes of a switching plan say; told beside every plan. */
enum Deviation {
    ORDER("Order: a plan knows only whether a group may move freely (isFreeSequence). What must come before a group stands in its description; every order that keeps to it was proved."),
    BRANCH("Choices: a plan has no branches. Steps that are done only sometimes say when, in their description."),
    IDENTITY("Identity: mRIDs are made from names. Equipment is to be matched by name with the model of the network that the plan is used with."),
    PEOPLE("People: each person of the crew list is a Crew; who they are is not known here."),
    JUMPER("JumperAction: the standard's Jumper is removed and replaced while the circuit is de-energized. Here it is a bypass that is put on and taken off alive, clamp by clamp; kind connect is a clamp that goes on, disconnect one that comes off."),
    GROUND("GroundAction: each end of a ground is an action of its own, the ground end first or last as the procedure says."),
    LEAD("Leads: the standard has no leads of a device. What goes on or comes off is a GenericAction on the device."),
    MODE("Settings besides reclosing, and taps: a ControlAction whose description says which setting takes which value; discreteValue counts the values of the kind from 0, the normal one."),
    HOLD("Holds: the standard has no hold-off. A hold is a ClearanceDocument with mustBeDeenergised and mustBeGrounded false; asking is a GenericAction, repeating and confirming are ClearanceAction update."),
    LOOK("Proofs, tests, looks and waits are VerificationActions; what must be so stands in words."),
    WORK("Going up and down, work by hand, carrying, writing down and waiting are GenericActions, in words."),
    TIME("Times: a procedure has none, so no planned or executed time is in the plan.");

    private final String words;

    Deviation(String words) {
        this.words = words;
    }

    String words() {
        return words;
    }
}
