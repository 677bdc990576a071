/* The lists behind the tables: what to measure, assumptions, cautions, and what the page was made
 * from. */
#include "text_parts.h"
#include <stdio.h>

static void labelled(struct writer *writer, const char *label, const char *text)
{
	if (!text || !*text)
		return;
	writer_pad(writer, 5);
	paragraph(writer, label, 10, text);
}

void text_to_measure(struct writer *writer, const struct result *result)
{
	if (result->to_measure_count == 0)
		return;
	writer_title(writer, "To measure or to ask for, what decides first on top");
	for (size_t i = 0; i < result->to_measure_count; i++) {
		const struct to_measure *entry = &result->to_measure[i];
		char number[32];
		snprintf(number, sizeof number, "%zu", i + 1);
		writer_right(writer, number, 4);
		paragraph(writer, "", 5, entry->what);
		labelled(writer, "why", entry->why);
		labelled(writer, "how", entry->how);
	}
}

void text_sentences(struct writer *writer, const char *title, const struct sentences *sentences,
                    bool numbered)
{
	if (sentences->count == 0)
		return;
	writer_title(writer, title);
	for (size_t i = 0; i < sentences->count; i++) {
		char number[32];
		snprintf(number, sizeof number, "%zu", i + 1);
		writer_right(writer, numbered ? number : "-", 4);
		paragraph(writer, "", 5, sentences->list[i]);
	}
}

static void record_entry(struct writer *writer, const char *label, const struct text *text)
{
	if (!is_known(*text) || !*text->value)
		return;
	writer_pad(writer, 2);
	paragraph(writer, label, LABEL_COLUMN + 2, text->value);
}

static void file_entry(struct writer *writer, const char *label, const char *name,
                       const char *sha256)
{
	if (name && *name) {
		writer_pad(writer, 2);
		paragraph(writer, label, LABEL_COLUMN + 2, name);
	}
	if (sha256 && *sha256) {
		writer_pad(writer, 2);
		paragraph(writer, "SHA-256", LABEL_COLUMN + 2, sha256);
	}
}

void text_record(struct writer *writer, const struct result *result)
{
	const struct cell *cell = result->cell;
	writer_title(writer, "Record");
	record_entry(writer, "title", &cell->title);
	record_entry(writer, "site", &cell->record.site);
	record_entry(writer, "prepared by", &cell->record.prepared_by);
	record_entry(writer, "revision", &cell->record.revision);
	record_entry(writer, "date", &cell->record.date);
	file_entry(writer, "file", result->file, result->sha256);
	for (size_t i = 0; result->histories && i < result->histories->count; i++)
		file_entry(writer, "history", result->histories->list[i].name,
		           result->histories->list[i].sha256);
	writer_pad(writer, 2);
	writer_text(writer, "made by");
	flow_begin(writer, LABEL_COLUMN + 2);
	flow(writer, "standfast ");
	flow(writer, release_version());
	if (result->states > 0) {
		flow(writer, ", ");
		flow(writer, phrase_count(result->states, "equilibrium", "equilibria").text);
		flow(writer, " solved");
	}
	flow_end(writer);
}
