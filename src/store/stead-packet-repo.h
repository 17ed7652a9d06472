/* stead-packet-repo.h - packets: what is to be shown of a student or a team, and what the
 * farm has recorded of a person for it.
 */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

typedef struct
{
  gint64     id;             /* 0: not saved yet */
  char      *name;
  gint64     person_id;      /* of one person; 0: of a team */
  gint64     event_id;       /* the event that it is for, whose team it shows without a person; 0: none */
  SteadDay   from_on;
  SteadDay   to_on;
  char      *brief;          /* (nullable): the work in the student's own words */
  gboolean   with_names;     /* names of others who agreed to it */
  gboolean   with_pictures;
  GPtrArray *sections;       /* of char: keys in their order, each once */
} SteadPacket;

SteadPacket *stead_packet_new  (void);
void         stead_packet_free (SteadPacket *packet);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadPacket, stead_packet_free)

/* Keys of all sections in their usual order, %NULL-terminated: "cover", "brief", "plan",
 * "hours", "money", "worth", "production", "build", "skills", "roles", "journal", "own",
 * "photos", "corrections", "signatures", "how". */
const char * const *stead_packet_sections (void);

/* Lists: (transfer full), empty if none; %NULL only with @error. */
/* By name. */
GPtrArray   *stead_packet_repo_list (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadPacket *stead_packet_repo_get  (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Refuses an unknown section, one that comes twice, none at all; a packet of nobody. */
gboolean     stead_packet_repo_save (SteadStore *store, SteadPacket *packet, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean     stead_packet_repo_drop (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- what is recorded of one person ------------------------------------------------ */

typedef struct
{
  gint64    id;
  SteadDay  day;
  double    minutes;
  char     *duty;
  gboolean  paid;
  SteadDay  entered_on;
  gboolean  is_checked;
  gint64    batch_id, sale_id, build_id, event_id;   /* 0: none */
} SteadPacketHours;

void stead_packet_hours_free (SteadPacketHours *hours);

typedef struct
{
  char     *subject;
  SteadDay  given_on;
  SteadDay  until_on;      /* STEAD_DAY_NONE: for good */
} SteadPacketTraining;

void stead_packet_training_free (SteadPacketTraining *training);

typedef enum
{
  STEAD_FIX_HOURS,         /* minutes before and after */
  STEAD_FIX_READING,       /* values before and after */
  STEAD_FIX_RECEIPT,       /* cents before and after */
  STEAD_FIX_CASH,          /* cents before and after */
} SteadFixKind;

typedef struct
{
  SteadFixKind  what;
  gint64        id, old_id;
  SteadDay      day;       /* of what was wrong */
  double        before, after;
  char         *note;      /* (nullable) */
} SteadPacketFix;

void stead_packet_fix_free (SteadPacketFix *fix);

/* Of the days from @from to @to, oldest first; hours that were corrected come once. */
GPtrArray *stead_packet_repo_hours     (SteadStore *store, gint64 person_id, SteadDay from, SteadDay to, GError **error) G_GNUC_WARN_UNUSED_RESULT;
GPtrArray *stead_packet_repo_trainings (SteadStore *store, gint64 person_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
GPtrArray *stead_packet_repo_fixes     (SteadStore *store, gint64 person_id, SteadDay from, SteadDay to, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Ids (of gint64) of the batches, and of the builds, that the person worked on, by name. */
GArray    *stead_packet_repo_batches   (SteadStore *store, gint64 person_id, SteadDay from, SteadDay to, GError **error) G_GNUC_WARN_UNUSED_RESULT;
GArray    *stead_packet_repo_builds    (SteadStore *store, gint64 person_id, SteadDay from, SteadDay to, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Sale days at which the person was to stand or worked, by day. */
GArray    *stead_packet_repo_sales     (SteadStore *store, gint64 person_id, SteadDay from, SteadDay to, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Names of those who worked on the batch besides @person_id and may be named; *out_others
 * counts them with those who may not. */
GPtrArray *stead_packet_repo_mates     (SteadStore *store, gint64 batch_id, gint64 person_id, int *out_others, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
