/* stead-work-repo.h - who worked when, and at what.
 *
 * Minutes are stored, never rounded hours.  What an advisor checked stays as it is.
 */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  gint64    id;             /* 0: not saved yet */
  gint64    person_id;
  SteadDay  day;
  gint64    from_at;        /* seconds since 1970; G_MININT64: only how long is known */
  gint64    to_at;
  double    minutes;        /* worked, without the break */
  double    break_minutes;
  char     *duty;           /* not empty */
  gboolean  paid;
  gint64    batch_id;       /* 0: none */
  gint64    sale_id;        /* 0: none */
  char     *note;           /* (nullable) */
  SteadDay  entered_on;     /* filled in when saved */
  gint64    checked_by;     /* 0: not yet */
  char     *person_name;    /* filled in when read */
} SteadWorkSpan;

void stead_work_span_free (SteadWorkSpan *span);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadWorkSpan, stead_work_span_free)

/* Adds one; fills in its id. */
gboolean   stead_work_repo_add     (SteadStore *store, SteadWorkSpan *span, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The hours of one sale day, by person. */
GPtrArray *stead_work_repo_of_sale (SteadStore *store, gint64 sale_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
