/* The parts of the text page, in the order in which it puts them together (text.c). */
#ifndef TEXT_PARTS_H
#define TEXT_PARTS_H

#include "pages.h"
#include "phrases.h"

enum { LABEL_COLUMN = 12 };      /* where the text beside the labels of the first block begins */

enum unit_system result_units(const struct result *result);
const struct check_result *
governing_check(const struct result *result); /* NULL: no check was judged */

/* text_verdict.c: verdict, reason, departures, what to do now, what it rests on */
void text_verdict(struct writer *writer, const struct result *result,
                  const struct page_options *options);
/* text_also.c: the check's own sentence, or what it lacks; false: neither */
bool flow_reason(struct writer *writer, const struct cell *cell, const struct check_result *check);
/* the other failing and unproven checks */
void text_also(struct writer *writer, const struct result *result);
/* text_tables.c */
void text_anchors(struct writer *writer, const struct result *result);
/* text_cycles.c: a table for each history and working cycle */
void text_cycles(struct writer *writer, const struct result *result);
void text_bed_ratios(struct writer *writer, const struct result *result);
void text_checks(struct writer *writer, const struct result *result, const char *only);
/* Why a check does not apply to this file; NULL: it does. */
const char *left_out_reason(const struct result *result, const char *id);
void text_left_out(struct writer *writer, const struct result *result);
/* text_lists.c */
void text_to_measure(struct writer *writer, const struct result *result);
void text_sentences(struct writer *writer, const char *title, const struct sentences *sentences,
                    bool numbered);
void text_record(struct writer *writer, const struct result *result);
/* unanchored_text.c: tilt and push that tip the cell, and how they were found */
void text_unanchored(struct writer *writer, const struct result *result);
void text_unanchored_trace(struct writer *writer, const struct result *result);
/* text_trace.c: one written calculation, step by step */
void text_steps(struct writer *writer, const struct trace *trace, enum unit_system units);
/* text_trace.c: the written calculation of every check that has one */
void text_trace(struct writer *writer, const struct result *result, const char *only);

#endif
