/**
 * Proves live-line switching procedures against a model of the feeder.
 *
 * <p>{@link org.keeplit.Keeplit} is the entry; the other packages that are exported hold what it takes and gives: values, and the limits
 * and watchers of a run. What works them out, what makes pages for people, the language server and the command line are not exported.
 */
module org.keeplit {
    requires transitive com.google.common;
    requires com.google.gson;
    requires info.picocli;
    requires io.github.javadiffutils;
    requires java.logging;
    requires java.xml;
    // What makes PDF needs these two, and has no descriptor to say so.
    requires jdk.xml.dom;
    requires org.apache.commons.logging;
    requires openhtmltopdf.core;
    requires openhtmltopdf.pdfbox;
    requires openhtmltopdf.svg.support;
    requires org.antlr.antlr4.runtime;
    requires org.apache.commons.csv;
    requires org.apache.pdfbox;
    requires org.eclipse.lsp4j;
    requires org.eclipse.lsp4j.jsonrpc;

    exports org.keeplit;
    exports org.keeplit.condition;
    exports org.keeplit.language;
    exports org.keeplit.network;
    exports org.keeplit.outcome;
    exports org.keeplit.procedure;
    exports org.keeplit.recheck;
    exports org.keeplit.rule;
    exports org.keeplit.text;
    exports org.keeplit.unit;
    exports org.keeplit.verdict;

    // They look at the fields and methods of what they are given.
    opens org.keeplit.command to info.picocli;
    opens org.keeplit.editor to org.eclipse.lsp4j.jsonrpc;
}
