/* Members that JSON pages of a result have in common (json.c). */
#ifndef JSON_PARTS_H
#define JSON_PARTS_H

#include "../result.h"
#include "json_writer.h"

/* "input": the cell file and the CSVs that it names, each with its digest */
void json_input_member(struct json *json, const struct result *result);
/* every step with its expression, in base units */
void json_trace_member(struct json *json, const char *key, const struct trace *trace);
/* json_cycles.c: "cycles": load cycles of each anchor from each source */
void json_cycles_member(struct json *json, const struct result *result);
/* unanchored_json.c: "unanchored": tilt and push that tip the cell, null without a load model */
void json_unanchored_member(struct json *json, const struct result *result);

#endif
