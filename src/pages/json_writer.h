/* A writer of JSON (RFC 8259): commas by itself, numbers so that they read back to the same double,
 * texts always valid UTF-8. No spaces, so that one object is one line. */
#ifndef JSON_WRITER_H
#define JSON_WRITER_H

#include "writer.h"

struct json {
	struct writer *writer;
	bool first;             /* no comma is due before the next value */
};

void json_open(struct json *json, char bracket);      /* '{' or '[' */
void json_close(struct json *json, char bracket);     /* '}' or ']' */
void json_key(struct json *json, const char *key);
void json_text(struct json *json, const char *text);  /* null for a NULL text */
void json_number(struct json *json, double value);    /* null where it is not finite */
void json_bool(struct json *json, bool value);
void json_null(struct json *json);
/* a key with its value; null for a NULL text, or where a number is not known */
void json_key_text(struct json *json, const char *key, const char *text);
void json_key_number(struct json *json, const char *key, bool known, double value);

#endif
