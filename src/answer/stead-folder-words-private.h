/* stead-folder-words-private.h - the tables of words behind stead-folder-words.c. */
#pragma once

#include "answer/stead-folder-answer.h"

G_BEGIN_DECLS

typedef struct
{
  const char *name;
  const char *meaning;   /* untranslated, context "table of the folder" or "column of the folder" */
  const char *unit;      /* (nullable): likewise, "unit of a column" */
} SteadFolderWords;

/* Each ends with a row without a name. */
extern const SteadFolderWords stead_folder_table_words[];
extern const SteadFolderWords stead_folder_column_words[];

G_END_DECLS
