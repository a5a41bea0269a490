package org.keeplit.language;

import java.util.Map;
import org.keeplit.network.Side;
import org.keeplit.procedure.Person;

/**
 * What the steps of one procedure share while they are read.
 *
 * @param session finds other files
 * @param report where mistakes go
 * @param crew the people by name
 * @param labels the labels so far, with their places
 * @param firstClamps for each jumper, on which side its first clamp went on
 */
record Work(
        Session session,
        Report report,
        Map<String, Person> crew,
        Map<String, Lexeme> labels,
        Map<String, Side> firstClamps) {}
