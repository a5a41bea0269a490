package org.keeplit.command;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Locale;
import org.keeplit.text.Unseen;

/** A command cannot be carried out, for a reason outside of it: told in one sentence, with the code of a command that cannot be carried out. */
final class Refused extends RuntimeException {
    private static final long serialVersionUID = 1;

    /** Says why. @param sentence one sentence */
    Refused(String sentence) {
        super(sentence);
    }

    /** {@return that something cannot be written, and why} @param what the file or folder, as it was named @param why what came of trying */
    static Refused unwritten(Object what, IOException why) {
        return new Refused(what + " cannot be written: " + reason(why));
    }

    /** {@return that a name cannot be the name of a file here} @param name the name, as it was given */
    static String noFileName(String name) {
        return "“" + Unseen.shown(name)
                + "” cannot be a file name here: the locale lacks its characters; set one in UTF-8, such as LC_ALL=C.UTF-8";
    }

    /** {@return why something could not be read or written, in a few words} @param why what came of trying */
    static String reason(IOException why) {
        if (why instanceof NoSuchFileException) {
            return "there is no such file or folder";
        } else if (why instanceof AccessDeniedException) {
            return "access is denied";
        } else if (why instanceof FileAlreadyExistsException) {
            return "something is there already";
        }
        String reason = why instanceof FileSystemException of && of.getReason() != null ? of.getReason() : why.getMessage();
        return reason == null ? "it failed" : reason.substring(0, 1).toLowerCase(Locale.ROOT) + reason.substring(1);
    }
}
