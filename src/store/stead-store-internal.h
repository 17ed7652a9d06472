/* stead-store-internal.h - the inside of SteadStore, for the files that make it up.
 *
 * The repositories use stead-store-private.h instead.
 */
#pragma once

#include "store/stead-connection.h"
#include "store/stead-given-ids.h"

G_BEGIN_DECLS

typedef struct _SteadBackupJob SteadBackupJob;
typedef struct _SteadPresence SteadPresence;

struct _SteadStore
{
  GObject            parent_instance;

  sqlite3           *db;
  const SteadSchema *schema;
  char              *path;           /* (nullable): whole; NULL in memory */
  GHashTable        *stmts;          /* address of the SQL -> sqlite3_stmt */
  SteadDay           today;          /* STEAD_DAY_NONE: ask the clock */
  gint64             change_no;      /* as last seen */
  gint64             data_version;   /* moves when another connection wrote */
  gboolean           read_only;
  gboolean           unchecked;      /* the quick check is still under way elsewhere */
  gint64             began_us;       /* until then: when the question under way was put, */
  gboolean           gave_up;        /* whether one took too long, */
  int                longest_value;  /* and the limit that comes back then */
  gboolean           damaged;        /* found so while open: nothing is written any more */

  /* The action under way. */
  gboolean           in_action;
  sqlite3_session   *session;        /* records it */
  char              *step_name;
  gboolean           forgets;        /* no step may keep what this action takes away */
  SteadGivenIds     *ids;            /* (nullable): of things that outlive it */

  char              *notice;         /* (nullable): told once */
  SteadDay           copy_tried_on;  /* the day whose copy was seen to, well or not */
  SteadBackupJob    *backup_job;     /* (nullable): the copy that is being checked */
  SteadPresence     *presence;       /* (nullable): the mark that it is open here */
};

/* A store round an open connection, which it takes over. */
SteadStore *stead_store_wrap (sqlite3           *db,
                              const char        *path,
                              const SteadSchema *schema) G_GNUC_WARN_UNUSED_RESULT;

/* The quick check is through: the bounds of reading a file of unknown state end. */
void        stead_store_end_unchecked (SteadStore *self);

/* The present day in the person's time zone. */
SteadDay    stead_store_clock_day (void);

/* As the public ones, with a schema that a test made up. */
SteadStore *stead_store_open_as   (const char           *path,
                                   SteadStoreOpenFlags   flags,
                                   const SteadSchema    *schema,
                                   GError              **error) G_GNUC_WARN_UNUSED_RESULT;
SteadStore *stead_store_create_as (const char           *path,
                                   const char           *farm_name,
                                   const SteadSchema    *schema,
                                   GError              **error) G_GNUC_WARN_UNUSED_RESULT;

/* The farm's one row of settings, as a new farm has it. */
gboolean    stead_store_insert_farm (sqlite3     *db,
                                     const char  *farm_name,
                                     GError     **error) G_GNUC_WARN_UNUSED_RESULT;

GPtrArray  *stead_store_verify_as (const char           *path,
                                   const SteadSchema    *schema,
                                   GCancellable         *cancellable,
                                   GError              **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same on an open farm of this program's schema; sentences go into @found. */
gboolean    stead_store_verify_connection (sqlite3       *db,
                                           GCancellable  *cancellable,
                                           GPtrArray     *found,
                                           GError       **error) G_GNUC_WARN_UNUSED_RESULT;

/* Starts the transaction of an action, of an undo or of a redo: may this farm be
 * written to, the copy of the day, BEGIN IMMEDIATE. */
gboolean    stead_store_begin_change (SteadStore  *self,
                                      GError     **error) G_GNUC_WARN_UNUSED_RESULT;
/* Counts the change and ends the transaction; on failure all is rolled back.
 * Emits "changed" after success. */
gboolean    stead_store_end_change   (SteadStore  *self,
                                      GError     **error) G_GNUC_WARN_UNUSED_RESULT;
void        stead_store_drop_change  (SteadStore  *self);

G_END_DECLS
