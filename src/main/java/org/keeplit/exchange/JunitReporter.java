package org.keeplit.exchange;

import java.io.StringWriter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.keeplit.procedure.Unjudged;
import org.keeplit.text.Problem;
import org.keeplit.text.ProblemPrinter;
import org.keeplit.text.Span;

/**
 * JUnit XML, as build servers read it: a suite for each procedure at one place, a case for each rule. What is broken is a failure, what
 * could not be worked out is an error (mistakes in files, too), what nothing asked for is skipped. There are no times in it.
 */
public final class JunitReporter implements Reporter {
    /** Makes a reporter. */
    public JunitReporter() {}

    @Override
    public String tell(Answer answer, List<Unjudged> unjudged, List<Problem> problems) {
        Map<String, List<Case>> suites = new LinkedHashMap<>();
        Cases.of(answer, unjudged).forEach(c -> suites.computeIfAbsent(c.suite(), s -> new ArrayList<>()).add(c));
        StringWriter text = new StringWriter();
        try {
            XMLStreamWriter xml = XMLOutputFactory.newInstance().createXMLStreamWriter(text);
            xml.writeStartDocument("UTF-8", "1.0");
            line(xml, 0);
            xml.writeStartElement("testsuites");
            xml.writeAttribute("name", "keeplit " + answer.command());
            if (!problems.isEmpty()) {
                files(problems, xml);
            }
            for (Map.Entry<String, List<Case>> suite : suites.entrySet()) {
                suite(suite.getKey(), suite.getValue(), xml);
            }
            line(xml, 0);
            xml.writeEndElement();
            xml.writeEndDocument();
            xml.close();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
        return text + "\n";
    }

    private static void line(XMLStreamWriter xml, int depth) throws XMLStreamException {
        xml.writeCharacters("\n" + "  ".repeat(depth));
    }

    private static void begin(String name, int tests, long failures, long errors, long skipped, XMLStreamWriter xml)
            throws XMLStreamException {
        line(xml, 1);
        xml.writeStartElement("testsuite");
        xml.writeAttribute("name", clean(name));
        xml.writeAttribute("tests", String.valueOf(tests));
        xml.writeAttribute("failures", String.valueOf(failures));
        xml.writeAttribute("errors", String.valueOf(errors));
        xml.writeAttribute("skipped", String.valueOf(skipped));
    }

    private static void files(List<Problem> problems, XMLStreamWriter xml) throws XMLStreamException {
        long errors = problems.stream().filter(p -> p.severity() == Problem.Severity.ERROR).count();
        begin("files", problems.size(), 0, errors, 0, xml);
        for (Problem problem : problems) {
            String file = Where.file(problem.span().source().name());
            line(xml, 2);
            xml.writeStartElement("testcase");
            xml.writeAttribute("classname", clean(file));
            Span span = problem.span();
            String place = span.line() == 0 ? "" : "line " + span.line() + ", column " + span.column() + ": ";
            xml.writeAttribute("name", place + problem.code());
            boolean error = problem.severity() == Problem.Severity.ERROR;
            told(error ? "error" : "system-out", clean(problem.message()), problem.code(), ProblemPrinter.print(problem), xml);
        }
        line(xml, 1);
        xml.writeEndElement();
    }

    private static long count(List<Case> cases, Case.Came... which) {
        return cases.stream().filter(c -> List.of(which).contains(c.came())).count();
    }

    private static void suite(String name, List<Case> cases, XMLStreamWriter xml) throws XMLStreamException {
        long failures = count(cases, Case.Came.BROKEN, Case.Came.AFTER, Case.Came.MISSED);
        begin(name, cases.size(), failures, count(cases, Case.Came.OPEN), count(cases, Case.Came.NOT_ASKED), xml);
        for (Case one : cases) {
            line(xml, 2);
            if (one.came() == Case.Came.KEPT) {
                xml.writeEmptyElement("testcase");
            } else {
                xml.writeStartElement("testcase");
            }
            xml.writeAttribute("classname", clean(one.owner()));
            xml.writeAttribute("name", clean(one.name()));
            switch (one.came()) {
                case KEPT -> {}
                case BROKEN, AFTER, MISSED -> told("failure", one.message(), one.about().id(), story(one), xml);
                case OPEN -> told("error", one.message(), "undecided", story(one), xml);
                case NOT_ASKED -> told("skipped", one.message(), "", "", xml);
                case WARNED, NOTED -> told("system-out", "", "", story(one), xml);
            }
        }
        line(xml, 1);
        xml.writeEndElement();
    }

    /** Writes what is inside a case, and closes it. */
    private static void told(String element, String message, String type, String text, XMLStreamWriter xml)
            throws XMLStreamException {
        line(xml, 3);
        if (text.isEmpty()) {
            xml.writeEmptyElement(element);
        } else {
            xml.writeStartElement(element);
        }
        boolean plain = element.equals("system-out");
        if (!plain) {
            xml.writeAttribute("message", clean(message));
        }
        if (!plain && !type.isEmpty()) {
            xml.writeAttribute("type", clean(type));
        }
        if (!text.isEmpty()) {
            xml.writeCharacters(clean(text));
            xml.writeEndElement();
        }
        line(xml, 2);
        xml.writeEndElement();
    }

    private static String story(Case one) {
        StringBuilder text = new StringBuilder(one.message()).append('\n');
        one.place().ifPresent(p -> text.append(Where.file(p.source().name())).append(':').append(p.line()).append('\n'));
        if (!one.about().full().isEmpty()) {
            text.append(one.about().full()).append('\n');
        }
        int number = 0;
        for (Case.Act act : one.way()) {
            text.append(String.format(Locale.ROOT, "%4d  %s\n", ++number, act.text()));
            act.changes().forEach(change -> text.append("        ").append(change).append('\n'));
        }
        return text.toString();
    }

    /** {@return text without the characters that XML 1.0 cannot hold} */
    private static String clean(String text) {
        StringBuilder clean = new StringBuilder(text.length());
        text.codePoints()
                .map(c -> c == '\n' || c == '\t' || c >= 0x20 && c <= 0xD7FF || c >= 0xE000 && c <= 0xFFFD || c >= 0x10000 ? c : 0xFFFD)
                .forEach(clean::appendCodePoint);
        return clean.toString();
    }
}
