/* stead-purge.h - removing for good what the farm knows of people who left.
 *
 * Every sum stays: hours, movements and money go on under the role and number.  What is
 * the person's own (reflections, goals, pictures, packets, training) goes; the name goes
 * from every text that is not signed, from the steps of undo, and from the bytes of the
 * file.  The dated copies beside the farm still hold it until they are deleted, too.
 */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  gint64    id;
  char     *name;
  SteadDay  left_on;      /* STEAD_DAY_NONE: still here */
  SteadDay  keep_until;   /* STEAD_DAY_NONE: the school set no day */
  gboolean  due;          /* that day has come */
} SteadPurgePerson;

void stead_purge_person_free (SteadPurgePerson *person);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadPurgePerson, stead_purge_person_free)

/* Returns: (transfer full): people who left or whose day has come, and who are not
 * removed yet; those due first, then by the day they left */
GPtrArray *stead_purge_list           (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Sets the school's day; STEAD_DAY_NONE: none.  Within an action. */
/* @out_day: (out): STEAD_DAY_NONE where the school set none, or there is no such person */
gboolean   stead_purge_get_keep_until (SteadStore *store, gint64 person_id, SteadDay *out_day, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_purge_set_keep_until (SteadStore *store, gint64 person_id, SteadDay day, GError **error) G_GNUC_WARN_UNUSED_RESULT;

typedef struct
{
  guint      people;
  guint      rows;        /* that were removed */
  guint      texts;       /* in which a name was replaced */
  guint      left;        /* signed rows that still hold a name */
  GPtrArray *copies;      /* (element-type utf8): paths of files beside the farm that may hold it */
} SteadPurged;

void stead_purged_free (SteadPurged *purged);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadPurged, stead_purged_free)

/**
 * stead_purge_people:
 * @ids: (element-type gint64): whom
 *
 * An action of its own that cannot be undone, nor can any before it; then the file is
 * written anew, so that no byte of what went is left in it.
 *
 * Returns: (transfer full): what was done, or %NULL with @error.  Then nothing was removed,
 *   but for an error in writing the file anew, which says so
 */
SteadPurged *stead_purge_people (SteadStore *store, const GArray *ids, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full) (element-type utf8): dated copies, and copies made before an
 * update or a restore, of the farm at @path */
GPtrArray   *stead_purge_list_copies   (const char *path);
/* Deletes them.  Returns: how many could not be deleted */
guint        stead_purge_delete_copies (const GPtrArray *copies);

G_END_DECLS
