/* The least that a program needs of the library: a version, a run, a page. */
#include <standfast.h>
#include <stdio.h>

static bool take(void *user, const void *bytes, size_t length)
{
	return fwrite(bytes, 1, length, user) == length;
}

int main(int argc, char **argv)
{
	static char bytes[1 << 20];
	FILE *in = argc == 2 ? fopen(argv[1], "rb") : NULL;
	if (in == NULL)
		return 9;
	size_t length = fread(bytes, 1, sizeof bytes, in);
	fclose(in);
	struct standfast *run = standfast_open(NULL, NULL);
	if (run == NULL || standfast_read(run, bytes, length, argv[1], NULL) != STANDFAST_DONE ||
	    standfast_compute(run, 0, NULL) != STANDFAST_DONE ||
	    standfast_page(run, STANDFAST_TEXT, 0, take, stdout) != STANDFAST_DONE)
		return 9;
	enum standfast_verdict verdict = standfast_verdict(run);
	standfast_close(run);
	return verdict == STANDFAST_HOLDS ? 0 : verdict == STANDFAST_FAILS ? 1 : 3;
}
