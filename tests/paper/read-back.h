/* read-back.h - the words of a paper as a reader that is not ours (pdftotext) finds them. */
#pragma once

#include "paper/stead-paper.h"

/* (transfer full): cell after cell in the order in which they were drawn, white space made one. */
char *read_back        (SteadStore *store, const char *name, const char *of, const SteadPaperOptions *options);
/* How many pages that paper has. */
int   read_back_pages  (SteadStore *store, const char *name, const char *of, const SteadPaperOptions *options);
/* Fails, showing the text, unless it holds the words; unless it holds them so many times. */
void  read_back_holds  (const char *text, const char *words);
void  read_back_counts (const char *text, const char *words, guint times);
