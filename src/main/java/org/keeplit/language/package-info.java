/**
 * From text files to typed trees. {@link org.keeplit.language.Reader} is the way in and
 * {@link org.keeplit.language.Library} what comes out; everything else is internal.
 *
 * <p>The way of the data: a {@code Source} becomes lines ({@code LineReader}), lines become an outline of nested
 * nodes ({@code Outline}), each line is split by one small grammar rule ({@code Shape}), and the phrases inside are
 * resolved word by word from a lexicon that the equipment kinds fill ({@code Vocabulary}). One resolver class a
 * kind of statement builds the typed tree.
 */
package org.keeplit.language;
