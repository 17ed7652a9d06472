/* stead-packet-class.h - "What leaves the farm with the packets of the whole class?" */
#pragma once

#include "store/stead-packet-repo.h"

G_BEGIN_DECLS

typedef struct
{
  guint      n_packets;    /* those that are saved, and one for each student without */
  guint      n_pictures;   /* of them show pictures */
  guint      n_names;      /* of them name others who agreed */
  GArray    *people;       /* of gint64: students who are here, and whose packet is saved */
  char      *sentence;     /* markup */
} SteadPacketClass;

void stead_packet_class_free (SteadPacketClass *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadPacketClass, stead_packet_class_free)

SteadPacketClass *stead_packet_class_new (SteadStore  *store,
                                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
