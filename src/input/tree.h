/* Bytes to a tree of nodes with their places in the file. YAML's aliases, anchors, tags and further
 * documents are refused: a cell file is read by people. */
#ifndef TREE_H
#define TREE_H

#include "../cell/arena.h"
#include "../cell/diagnostic.h"

enum { MAX_FILE_BYTES = 1 << 20, MAX_DEPTH = 16, MAX_NODES = 50000 };

enum node_kind { NODE_SCALAR, NODE_SEQUENCE, NODE_MAP };
struct node {
	enum node_kind kind;
	struct mark mark;
	const char *text; size_t length;   /* scalar; NUL-terminated too */
	bool quoted;
	const char *key; struct mark key_mark;   /* set where the node stands in a map */
	struct node *first, *next;         /* children in file order; next sibling */
	size_t count;                      /* children */
};

/* NULL with a diagnostic where a fault leaves nothing to read. A fault that leaves the rest
 * readable (a key written twice, an alias, an anchor, a tag) is reported and the tree given all the
 * same, so that one run shows all faults: ask to->errors. An empty file is an empty map. `file`
 * goes into the marks. */
struct node *tree_read(struct arena *arena, const void *bytes, size_t length, uint32_t file,
                       struct diagnostics *to);

#endif
