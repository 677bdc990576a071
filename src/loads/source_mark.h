/* How a tabled figure came to be known, so that no page prints a figure as surer than it is. */
#ifndef SOURCE_MARK_H
#define SOURCE_MARK_H

/* SEEN: read in a public text, which may itself quote the standard (the source says which text).
 * FROM_MEMORY: recalled; the standard itself must be opened before the figure is used. */
enum source_mark { MARK_SEEN, MARK_FROM_MEMORY };

#endif
