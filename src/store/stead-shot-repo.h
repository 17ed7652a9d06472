/* stead-shot-repo.h - pictures with captions, and who is on them.
 *
 * A picture may be shown once everybody on it has agreed to be shown in pictures, and
 * has not taken that back.
 */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  gint64     id;            /* 0: not saved yet */
  gint64     picture_id;    /* for stead_picture_repo_get() */
  SteadDay   day;
  char      *caption;
  gint64     person_id;     /* whose packet it is meant for; 0: anybody's */
  gint64     batch_id;      /* 0: none; so the two below */
  gint64     build_id;
  gint64     event_id;
  GArray    *people;        /* ids (of gint64) of who is on it; may be %NULL when saved: nobody */
  GPtrArray *unasked;       /* names of those on it without a consent; filled in when read */
} SteadShot;

void stead_shot_free (SteadShot *shot);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadShot, stead_shot_free)

/* (transfer full), oldest first: meant for one person's packet; @person_id 0: all. */
GPtrArray *stead_shot_repo_list (SteadStore *store, gint64 person_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadShot *stead_shot_repo_get  (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Another picture takes the place of the one before, which goes. */
gboolean   stead_shot_repo_save (SteadStore *store, SteadShot *shot, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* With its picture. */
gboolean   stead_shot_repo_drop (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Whether everybody on it agreed. */
gboolean   stead_shot_may_show  (const SteadShot *shot);

G_END_DECLS
