/* stead-release-repo.h - what left the farm: when, what, to whom, on which ground. */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  gint64    id;          /* 0: not saved yet */
  SteadDay  day;
  char     *what;        /* "The whole farm as a folder: 16 people by name"; not empty */
  char     *to_whom;     /* not empty */
  char     *ground;      /* "consent", "the school's own use"; not empty */
  gint64    by_person;   /* 0: not said */
  char     *by_name;     /* (nullable): filled in when read */
  guint     n_people;    /* whom it told of; filled in when read */
} SteadRelease;

void stead_release_free (SteadRelease *release);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadRelease, stead_release_free)

/* Newest first; empty if none. */
GPtrArray *stead_release_repo_list (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_release_repo_add:
 * @people: (nullable) (element-type gint64): whom it tells of by name
 *
 * Fills in the id.  A release is not changed any more.
 */
gboolean   stead_release_repo_add  (SteadStore    *store,
                                    SteadRelease  *release,
                                    const GArray  *people,
                                    GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/* Returns: (transfer full) (element-type gint64): everybody whose name is still known */
GArray    *stead_release_repo_named (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
