/* stead-routine-repo.h - what has to be done again and again, or once at an age. */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  gint64    id;            /* 0: not saved yet */
  gint64    batch_id;      /* one of the two is 0 */
  gint64    water_id;
  char     *name;          /* "Weigh 30 fish"; not empty */
  int       every_days;    /* 0: once */
  SteadDay  start_on;      /* of what recurs: the first day it is due */
  int       age_days;      /* once, so many days after the batch began (hatch, for a flock); -1 */
  double    degree_days;   /* once, at this sum since the crop was set out; NAN */
  gboolean  paused;
  SteadDay  last_done;     /* filled in when read; STEAD_DAY_NONE: never */
} SteadRoutine;

SteadRoutine *stead_routine_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void          stead_routine_free (SteadRoutine *routine);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadRoutine, stead_routine_free)

/* Of one batch or water (the other 0), or all of batches and waters under way (both
 * 0), paused ones among them; by name. */
GPtrArray *stead_routine_repo_list   (SteadStore *store, gint64 batch_id, gint64 water_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadRoutine *stead_routine_repo_get (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Due in just one way: every so many days, at an age, or at a sum of degree days.  An
 * id of 0 inserts and fills in the id. */
gboolean   stead_routine_repo_save   (SteadStore *store, SteadRoutine *routine, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_routine_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_routine_repo_done   (SteadStore *store, gint64 id, SteadDay day, gint64 person_id, const char *note,
                                      GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
