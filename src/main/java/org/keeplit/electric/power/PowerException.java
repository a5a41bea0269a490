package org.keeplit.electric.power;

/** A network lacks what a load flow needs; the message names the element. */
public final class PowerException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** Says what is missing. @param message one sentence that names the element */
    public PowerException(String message) {
        super(message);
    }
}
