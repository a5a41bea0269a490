package org.keeplit.explore;

/** Spreads keys over tables of any length. */
final class Spread {
    private Spread() {}

    /** {@return a key with each bit of it in every bit; the finish of MurmurHash3, public domain} */
    static long hash(long key) {
        long hash = key * 0x9E3779B97F4A7C15L;
        hash = (hash ^ hash >>> 33) * 0xFF51AFD7ED558CCDL;
        hash = (hash ^ hash >>> 33) * 0xC4CEB9FE1A85EC53L;
        return hash ^ hash >>> 33;
    }

    /** {@return where a hash lies in a table, by its upper half} */
    static int slot(long hash, int length) {
        return (int) ((hash >>> 32) * length >>> 32);
    }
}
