/* stead-workbook-answer.h - the farm's records as the sheets of one workbook. */
#pragma once

#include "answer/stead-log-answer.h"
#include "store/stead-months-repo.h"

G_BEGIN_DECLS

typedef struct
{
  GPtrArray *sheets;      /* (element-type SteadLogAnswer): hours, money, stock, production, sales, people */
  guint      production;  /* which of them has the months; its columns 1 and 5 to 6 make charts */
  SteadDay   from, to;    /* the school year that today is in, up to today */
} SteadWorkbookAnswer;

void stead_workbook_answer_free (SteadWorkbookAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadWorkbookAnswer, stead_workbook_answer_free)

/* @names: %FALSE: people stand under their role and number, and what was written about
 * others is left out. */
SteadWorkbookAnswer *stead_workbook_answer_new (SteadStore  *store,
                                                gboolean     names,
                                                GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* "Student 3" */
char *stead_words_role_number (const char *role,
                               gint64      id) G_GNUC_WARN_UNUSED_RESULT;

/* The days of the school year that holds today, up to today. */
gboolean stead_workbook_school_year (SteadStore  *store,
                                     SteadDay    *out_from,
                                     GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
