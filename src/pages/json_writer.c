#include "json_writer.h"
#include "utf8.h"
#include "../quantity/quantity.h"
#include <stdio.h>
#include <string.h>

static void put(struct json *json, const char *text)
{
	writer_bytes(json->writer, text, strlen(text));
}

static void begin_value(struct json *json)
{
	if (!json->first)
		put(json, ",");
	json->first = false;
}

void json_open(struct json *json, char bracket)
{
	begin_value(json);
	writer_bytes(json->writer, &bracket, 1);
	json->first = true;
}

void json_close(struct json *json, char bracket)
{
	writer_bytes(json->writer, &bracket, 1);
	json->first = false;
}

static void put_escape(struct json *json, uint32_t code)
{
	char text[16];
	snprintf(text, sizeof text, "\\u%04x", (unsigned)code);
	put(json, text);
}

static void put_character(struct json *json, const char *text, const struct character *character)
{
	if (!character->valid) {
		put_escape(json, 0xFFFD);
	} else if (character->code == '"' || character->code == '\\') {
		put(json, "\\");
		writer_bytes(json->writer, text, 1);
	} else if (character->code < 0x10000 && utf8_is_control(character->code)) {
		/* more than the standard asks for: the line must be safe to print, too */
		put_escape(json, character->code);
	} else {
		writer_bytes(json->writer, text, character->bytes);
	}
}

static void put_string(struct json *json, const char *text)
{
	size_t length = strlen(text);
	put(json, "\"");
	while (length > 0) {
		struct character character = utf8_next(text, length);
		put_character(json, text, &character);
		text += character.bytes;
		length -= character.bytes;
	}
	put(json, "\"");
}

void json_key(struct json *json, const char *key)
{
	begin_value(json);
	put_string(json, key);
	put(json, ":");
	json->first = true;
}

void json_text(struct json *json, const char *text)
{
	begin_value(json);
	if (text)
		put_string(json, text);
	else
		put(json, "null");
}

void json_number(struct json *json, double value)
{
	char text[48];
	begin_value(json);
	number_write_exact(value, text, sizeof text);
	put(json, text);
}

void json_bool(struct json *json, bool value)
{
	begin_value(json);
	put(json, value ? "true" : "false");
}

void json_null(struct json *json)
{
	begin_value(json);
	put(json, "null");
}

void json_key_text(struct json *json, const char *key, const char *text)
{
	json_key(json, key);
	json_text(json, text);
}

void json_key_number(struct json *json, const char *key, bool known, double value)
{
	json_key(json, key);
	if (known)
		json_number(json, value);
	else
		json_null(json);
}
