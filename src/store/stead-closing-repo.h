/* stead-closing-repo.h - days whose books are closed.
 *
 * Up to a closed day receipts, movements, harvests, cash lines, counts and uses stay as
 * they are; triggers of the file hold this, whoever writes.  What turns out wrong later is
 * a new entry of a later day that names what it corrects.
 */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  gint64    id;
  SteadDay  through_day;
  SteadDay  closed_on;
  gint64    person_id;    /* the advisor */
  char     *note;         /* (nullable) */
} SteadClosing;

void stead_closing_free (SteadClosing *closing);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadClosing, stead_closing_free)

/* Newest first. */
GPtrArray *stead_closing_repo_list (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The last day that is closed; STEAD_DAY_NONE: none.  FALSE with @error. */
gboolean   stead_closing_repo_last (SteadStore *store, SteadDay *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* What stands against closing through a day. */
typedef struct
{
  gint64 open_counts;     /* counts with a difference and no reason */
  gint64 open_sheets;     /* statements that were not agreed to */
} SteadClosingBars;

gboolean   stead_closing_repo_bars (SteadStore *store, SteadDay through_day, SteadClosingBars *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_closing_repo_close:
 * @through_day: before today, after the last closed day
 * @advisor_id: an advisor who is still here
 * @note: (nullable)
 *
 * Refused while a count or a statement of these days is open.  Only undo opens them again.
 */
gboolean   stead_closing_repo_close (SteadStore *store, SteadDay through_day, gint64 advisor_id, const char *note,
                                     GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
