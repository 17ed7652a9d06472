/* stead-packet-private.h - the makers of the single sections. */
#pragma once

#include "answer/stead-batch-answer.h"
#include "answer/stead-batch-card-private.h"
#include "answer/stead-build-answer.h"
#include "answer/stead-kitchen-answer.h"
#include "answer/stead-packet-answer.h"
#include "answer/stead-statement-answer.h"
#include "store/stead-months-repo.h"

G_BEGIN_DECLS

struct _SteadPacketSource
{
  GHashTable *statements;   /* of "FROM TO" */
  GHashTable *months;       /* likewise */
  GHashTable *batches;      /* of their id */
  GHashTable *kitchens;
  GHashTable *builds;
  GHashTable *lines;        /* of a batch: SteadPacketLines */
  GHashTable *entries;      /* of "FACT ID": what it is called */
};

/* What the lines of a batch's table are made of: of SteadPacketEntry, each %NULL until something is known. */
typedef struct
{
  GPtrArray *of[STEAD_N_BATCH_LINES];
} SteadPacketLines;

void stead_packet_lines_free (SteadPacketLines *lines);

/* The one that is being made, and its part. */
typedef struct
{
  SteadStore        *store;
  SteadPacketSource *source;
  SteadPacketAnswer *answer;
  SteadPacketPart   *part;
  GError            *problem;   /* (nullable): the first thing that could not be read while an entry was named */
} SteadPacketMaking;

typedef gboolean (*SteadPacketMake) (SteadPacketMaking *making, GError **error);

gboolean stead_packet_make_cover      (SteadPacketMaking *making, GError **error);
gboolean stead_packet_make_brief      (SteadPacketMaking *making, GError **error);
gboolean stead_packet_make_plan       (SteadPacketMaking *making, GError **error);
gboolean stead_packet_make_hours      (SteadPacketMaking *making, GError **error);
gboolean stead_packet_make_money      (SteadPacketMaking *making, GError **error);
gboolean stead_packet_make_worth      (SteadPacketMaking *making, GError **error);
gboolean stead_packet_make_production (SteadPacketMaking *making, GError **error);
gboolean stead_packet_make_build      (SteadPacketMaking *making, GError **error);
gboolean stead_packet_make_skills     (SteadPacketMaking *making, GError **error);
gboolean stead_packet_make_roles      (SteadPacketMaking *making, GError **error);
gboolean stead_packet_make_journal    (SteadPacketMaking *making, GError **error);
gboolean stead_packet_make_own        (SteadPacketMaking *making, GError **error);
gboolean stead_packet_make_photos     (SteadPacketMaking *making, GError **error);
gboolean stead_packet_make_fixes      (SteadPacketMaking *making, GError **error);
gboolean stead_packet_make_signs      (SteadPacketMaking *making, GError **error);
gboolean stead_packet_make_how        (SteadPacketMaking *making, GError **error);

/* @text: (transfer full) */
void            stead_packet_add_text  (SteadPacketMaking *making, SteadPacketBlockKind kind, char *text);
/* Titles of columns, NULL-terminated; those from @first_figure on are figures. */
SteadCardTable *stead_packet_add_table (SteadPacketMaking *making, int first_figure, ...) G_GNUC_NULL_TERMINATED;
/* Cells, each (transfer full) (nullable), as many as there are columns. */
void            stead_packet_add_row   (SteadCardTable *table, ...);

/* A chart, and what it shows in words; both (transfer full). */
void            stead_packet_add_months (SteadPacketMaking *making, SteadPacketMonths *months, char *text);
void            stead_packet_add_scores (SteadPacketMaking *making, SteadEventScores *scores, char *text);

/* A figure of the part; @text: (transfer full) */
SteadPacketFigure *stead_packet_add_figure (SteadPacketMaking *making, char *text);
/* Returns: (transfer none) (nullable): %NULL once there are too many to be listed; those are counted alone */
SteadPacketEntry  *stead_packet_add_entry  (SteadPacketFigure *figure, char *text, SteadTarget target, gint64 id);
/* An entry behind a statement, which leads to its place or its card. */
void               stead_packet_add_posting (SteadPacketMaking *making, SteadPacketFigure *figure,
                                             const SteadStatementEntry *entry);
/* What the farm earned, with the mark of all that it is made of. */
char              *stead_packet_marked_net  (SteadPacketMaking *making, const SteadStatementAnswer *statement) G_GNUC_WARN_UNUSED_RESULT;
/* "Nov 3, 2026: Cash book: Sales, Winter market: $48.00" */
char              *stead_packet_posting_text (SteadPacketMaking *making, const SteadStatementEntry *entry) G_GNUC_WARN_UNUSED_RESULT;
void               stead_packet_entry_free  (SteadPacketEntry *entry);
/* The name of @row with the mark of what it is made of; %NULL with @error. */
char              *stead_packet_batch_line  (SteadPacketMaking *making, const SteadBatchAnswer *batch,
                                             const SteadBatchRow *row, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* @text with the raised mark of @figure: "41:30 ¹²". */
char              *stead_packet_marked     (const char *text, const SteadPacketFigure *figure) G_GNUC_WARN_UNUSED_RESULT;

/* Nothing is recorded; @lack: (transfer full): what to enter, and where. */
void stead_packet_blank (SteadPacketMaking *making, char *lack, SteadTarget target, gint64 id);

/* Whose packet it is. */
gint64      stead_packet_person_id   (const SteadPacketMaking *making, guint n);
const char *stead_packet_person_name (const SteadPacketMaking *making, guint n);
gboolean    stead_packet_is_team     (const SteadPacketMaking *making);

typedef GArray *(*SteadPacketReadIds) (SteadStore *store, gint64 person_id, SteadDay from, SteadDay to, GError **error);

/* (transfer full): ids (gint64) of all people of the packet, each once; @read: as stead_packet_repo_batches() */
GArray *stead_packet_ids_of_all (SteadPacketMaking *making, SteadPacketReadIds read, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer none): made once a source. */
const SteadStatementAnswer *stead_packet_statement (SteadPacketMaking *making, GError **error);
const GPtrArray            *stead_packet_months    (SteadPacketMaking *making, GError **error);   /* of SteadMonth */
const SteadBatchAnswer     *stead_packet_batch     (SteadPacketMaking *making, gint64 batch_id, GError **error);
const SteadKitchenAnswer   *stead_packet_kitchen   (SteadPacketMaking *making, gint64 batch_id, GError **error);
const SteadBuildAnswer     *stead_packet_build     (SteadPacketMaking *making, gint64 build_id, GError **error);

char *stead_packet_days  (SteadDay from, SteadDay to) G_GNUC_WARN_UNUSED_RESULT;
char *stead_packet_hm    (double minutes) G_GNUC_WARN_UNUSED_RESULT;
char *stead_packet_money (const SteadPacketMaking *making, gint64 cents) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
