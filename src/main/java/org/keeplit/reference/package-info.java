/** Tables of the trade, each with its source in its file under {@code src/main/resources}. They hold no rule; rules and cards look figures up in them. */
package org.keeplit.reference;
