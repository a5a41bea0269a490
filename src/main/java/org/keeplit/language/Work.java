package org.keeplit.language;

import java.util.Map;
import org.keeplit.procedure.Person;

/**
 * What the steps of one procedure share while they are read.
 *
 * @param session finds other files
 * @param report where mistakes go
 * @param crew the people by name
 * @param labels the labels so far, with their places
 */
record Work(
        Session session,
        Report report,
        Map<String, Person> crew,
        Map<String, Lexeme> labels) {}
