package org.keeplit.language;

import com.google.common.collect.ImmutableMap;
import org.keeplit.text.Pages;

/** The pages that explain the codes of the problems that reading can tell. */
public final class Explanations {
    private Explanations() {}

    /** {@return the pages by code, in the order of the codes} */
    public static ImmutableMap<String, String> pages() {
        return Pages.of(Explanations.class);
    }
}
