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

/* The one that is being made, and its part. */
typedef struct
{
  SteadStore        *store;
  SteadPacketSource *source;
  SteadPacketAnswer *answer;
  SteadPacketPart   *part;
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
void               stead_packet_add_entry  (SteadPacketFigure *figure, char *text, SteadTarget target, gint64 id);
/* @text with the raised mark of @figure: "41:30 ¹²". */
char              *stead_packet_marked     (const char *text, const SteadPacketFigure *figure) G_GNUC_WARN_UNUSED_RESULT;

/* Nothing is recorded; @lack: (transfer full): what to enter, and where. */
void stead_packet_blank (SteadPacketMaking *making, char *lack, SteadTarget target, gint64 id);

/* Whose packet it is. */
gint64      stead_packet_person_id   (const SteadPacketMaking *making, guint n);
const char *stead_packet_person_name (const SteadPacketMaking *making, guint n);
gboolean    stead_packet_is_team     (const SteadPacketMaking *making);

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
