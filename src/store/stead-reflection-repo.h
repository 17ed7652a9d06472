/* stead-reflection-repo.h - thoughts on what happened, goals, roles and services of a person. */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  gint64    id;          /* 0: not saved yet */
  gint64    person_id;
  SteadDay  day;
  char     *question;    /* (nullable): as it was asked */
  char     *text;
  gint64    batch_id;    /* 0: none; so the three below */
  gint64    sale_id;
  gint64    build_id;
  gint64    event_id;
  gboolean  is_shown;    /* chosen by the student for the packet */
} SteadReflection;

void stead_reflection_free (SteadReflection *reflection);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadReflection, stead_reflection_free)

typedef struct
{
  gint64    id;          /* 0: not saved yet */
  gint64    person_id;
  char     *words;
  SteadDay  set_on;
  SteadDay  due_on;      /* STEAD_DAY_NONE: no day was named */
  SteadDay  reached_on;  /* STEAD_DAY_NONE: not yet */
  char     *result;      /* (nullable) */
} SteadGoal;

void stead_goal_free (SteadGoal *goal);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadGoal, stead_goal_free)

typedef struct
{
  gint64    id;          /* 0: not saved yet */
  gint64    person_id;
  char     *words;       /* "Treasurer", "Trees planted at the library" */
  gboolean  is_service;
  SteadDay  from_on;
  SteadDay  to_on;       /* STEAD_DAY_NONE: still held */
} SteadRoleHeld;

void stead_role_held_free (SteadRoleHeld *role);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadRoleHeld, stead_role_held_free)

/**
 * stead_reflection_repo_last_writer:
 * @out_person_id: (out): of those who are here, whose newest goal, thought or try of a skill is the newest
 *   of all; 0 where nobody has one
 */
gboolean stead_reflection_repo_last_writer (SteadStore  *store,
                                            gint64      *out_person_id,
                                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Lists: (transfer full), oldest first, empty if none; %NULL only with @error.
 * Saving: an id of 0 inserts and fills in the id. */
GPtrArray *stead_reflection_repo_list (SteadStore *store, gint64 person_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_reflection_repo_save (SteadStore *store, SteadReflection *reflection, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_reflection_repo_drop (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

GPtrArray *stead_goal_repo_list       (SteadStore *store, gint64 person_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_goal_repo_save       (SteadStore *store, SteadGoal *goal, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_goal_repo_drop       (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

GPtrArray *stead_role_held_repo_list  (SteadStore *store, gint64 person_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_role_held_repo_save  (SteadStore *store, SteadRoleHeld *role, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_role_held_repo_drop  (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
