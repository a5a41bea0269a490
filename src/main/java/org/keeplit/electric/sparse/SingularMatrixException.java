package org.keeplit.electric.sparse;

/** A pivot is zero or not a number: nothing holds that vertex. */
public final class SingularMatrixException extends ArithmeticException {
    private final int vertex;

    SingularMatrixException(int vertex) {
        super("The matrix is singular at row " + vertex + ".");
        this.vertex = vertex;
    }

    /**
     * The row that could not be eliminated.
     *
     * @return the vertex, in the caller's numbering
     */
    public int vertex() {
        return vertex;
    }
}
