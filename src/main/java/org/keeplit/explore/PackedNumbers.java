package org.keeplit.explore;

import java.util.Arrays;

/**
 * Whole numbers from 0 on, each in as many bits as the greatest of them takes. Pages of equally many numbers fill their longs
 * exactly, so that no number lies in two pages.
 */
final class PackedNumbers {
    private static final int PAGE_BITS = 12;
    private static final int PAGE = 1 << PAGE_BITS;

    private long[][] pages = new long[4][];
    private int width;
    private int size;

    /** @param width how many bits they take to begin with; 1 at least */
    PackedNumbers(int width) {
        this.width = width;
    }

    /** {@return so many zeros} @param width how many bits each takes at most */
    static PackedNumbers zeros(int size, int width) {
        PackedNumbers all = new PackedNumbers(width);
        all.pages = new long[(size + PAGE - 1) / PAGE][PAGE / 64 * width];
        all.size = size;
        return all;
    }

    int size() {
        return size;
    }

    long get(int index) {
        long[] page = pages[index >>> PAGE_BITS];
        int bit = (index & PAGE - 1) * width;
        int word = bit >>> 6;
        int shift = bit & 63;
        long value = page[word] >>> shift;
        if (shift + width > 64) {
            value |= page[word + 1] << 64 - shift;
        }
        return value & mask();
    }

    /** Puts a number at the end. */
    void append(long value) {
        int page = size >>> PAGE_BITS;
        if (page >= pages.length) {
            pages = Arrays.copyOf(pages, pages.length * 2);
        }
        if (pages[page] == null) {
            pages[page] = new long[PAGE / 64 * width];
        }
        size++;
        set(size - 1, value);
    }

    void set(int index, long value) {
        if ((value & ~mask()) != 0) {
            widen(64 - Long.numberOfLeadingZeros(value));
        }
        long[] page = pages[index >>> PAGE_BITS];
        int bit = (index & PAGE - 1) * width;
        int word = bit >>> 6;
        int shift = bit & 63;
        page[word] = page[word] & ~(mask() << shift) | value << shift;
        if (shift + width > 64) {
            int low = 64 - shift;
            page[word + 1] = page[word + 1] & ~(mask() >>> low) | value >>> low;
        }
    }

    private long mask() {
        return width == 64 ? -1 : (1L << width) - 1;
    }

    private void widen(int bits) {
        PackedNumbers wider = new PackedNumbers(bits);
        for (int i = 0; i < size; i++) {
            wider.append(get(i));
            if ((i + 1 & PAGE - 1) == 0) {
                pages[i >>> PAGE_BITS] = null;
            }
        }
        pages = wider.pages;
        width = bits;
    }

    long bytes() {
        long bytes = 8L * pages.length;
        for (long[] page : pages) {
            bytes += page == null ? 0 : 8L * page.length;
        }
        return bytes;
    }
}
