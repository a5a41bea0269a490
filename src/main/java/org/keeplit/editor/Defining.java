package org.keeplit.editor;

import java.util.List;
import org.eclipse.lsp4j.Location;

/** Where a name is declared, and everywhere it is used. */
final class Defining {
    private Defining() {}

    static List<Location> definition(Name name, Names names, Places places) {
        List<Name> declared = names.same(name).stream().filter(Name::declares).toList();
        return declared.stream().map(n -> places.location(n.span())).toList();
    }

    static List<Location> references(Name name, Names names, boolean withDeclaration, Places places) {
        return names.same(name).stream()
                .filter(n -> withDeclaration || !n.declares())
                .map(n -> places.location(n.span()))
                .toList();
    }
}
