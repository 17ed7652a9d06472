/* stead-packet-figures.h - the charts of a packet: production by month, scores of practices. */
#pragma once

#include "answer/stead-packet-answer.h"
#include "paper/stead-pages.h"

G_BEGIN_DECLS

void stead_packet_figures_add_months (SteadPages *pages, const SteadPacketMonths *months);
/* @scores: with a line at least */
void stead_packet_figures_add_scores (SteadPages *pages, SteadEventScores *scores);

G_END_DECLS
