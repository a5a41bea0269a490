/**
 * Network models of other programs: IEC 61970 CIM100 distribution models as RDF/XML become network texts, with a list of
 * everything that could not be carried, and a proved procedure becomes a switching plan of the same standard's Operations
 * package.
 */
package org.keeplit.gridfile;
